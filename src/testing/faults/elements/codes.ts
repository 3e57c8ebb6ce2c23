import type { FhirVersion } from '../../../fhir/version.ts';
import { type DataFault, dataFaults, type Fault, type JsonObject } from '../fault.ts';
import {
  adding,
  all,
  attachments,
  every,
  inOne,
  items,
  type Place,
  requests,
  setting,
  typeHaving,
} from '../place.ts';
import { binding, codeSystem, section } from '../rules.ts';

const terminology = 'http://terminology.hl7.org/CodeSystem';
const codingRule = section('Coding.system', 'datatypes.html#Coding');

/** Faults of codes: outside a required list, outside their code system, or with another's words. */
export const codeFaults: readonly Fault[] = dataFaults('code', [
  outside('Observation.status', 'observation-status', 'done'),
  {
    ...outside('Observation.status', 'observation-status', 'completed'),
    id: 'observation-status-of-other-type',
    title: 'an observation has a status that other resources have',
  },
  {
    ...outside('Observation.status', 'observation-status', 'Final'),
    id: 'observation-status-in-capitals',
    title: 'a status is written with a capital letter',
  },
  outside('DiagnosticReport.status', 'diagnostic-report-status', 'complete'),
  outside('Composition.status', 'composition-status', 'signed'),
  outside('Encounter.status', 'encounter-status', 'done'),
  outside('ServiceRequest.status', 'request-status', 'open'),
  outside('ServiceRequest.intent', 'request-intent', 'wish'),
  outside('ServiceRequest.priority', 'request-priority', 'soon'),
  outside('Media.status', 'event-status', 'done', ['R4', 'R4B']),
  outside('DocumentReference.status', 'document-reference-status', 'final', ['R5']),
  outside('Patient.gender', 'administrative-gender', 'F'),
  {
    ...within('Narrative.status', 'narrative-status', every('text'), 'status', 'written'),
    title: 'a narrative with a status outside the required list',
  },
  within('Identifier.use', 'identifier-use', every('identifier'), 'use', 'primary'),
  within('HumanName.use', 'name-use', every('name'), 'use', 'legal'),
  within('Provenance.entity.role', 'provenance-entity-role', every('entity'), 'role', 'previous'),
  {
    ...within(
      'Composition.attester.mode',
      'composition-attestation-mode',
      every('attester'),
      'mode',
      'signature',
    ),
    versions: ['R4', 'R4B'],
  },
  within('Composition.section.mode', 'list-mode', every('section'), 'mode', 'list'),
  within(
    'Bundle.type',
    'bundle-type',
    (bundle) => [{ object: bundle, path: [] }],
    'type',
    'batched',
  ),
  within('Bundle.entry.request.method', 'http-verb', requests, 'method', 'UPDATE'),
  within('Attachment.contentType', 'mimetypes', attachments, 'contentType', 'jpeg picture'),
  {
    id: 'telecom-system-outside-list',
    title: 'a kind of telephone or address outside the required list',
    rule: binding('ContactPoint.system', 'contact-point-system'),
    code: 'code-invalid',
    plant: adding(
      all('Patient', 'Practitioner'),
      'telecom',
      { system: 'mobile', value: '555 0100' },
      'system',
    ),
  },
  {
    id: 'telecom-use-outside-list',
    title: 'a use of a telephone outside the required list',
    rule: binding('ContactPoint.use', 'contact-point-use'),
    code: 'code-invalid',
    plant: adding(
      all('Patient', 'Practitioner'),
      'telecom',
      { system: 'phone', value: '555 0100', use: 'private' },
      'use',
    ),
  },
  {
    id: 'address-type-outside-list',
    title: 'a kind of address outside the required list',
    rule: binding('Address.type', 'address-type'),
    code: 'code-invalid',
    plant: adding(all('Patient'), 'address', { type: 'mail', text: 'Quay 7' }, 'type'),
  },
  {
    id: 'link-type-outside-list',
    title: 'a kind of link between patients outside the required list',
    rule: binding('Patient.link.type', 'link-type'),
    code: 'code-invalid',
    plant: adding(
      all('Patient'),
      'link',
      { other: { display: 'an older record' }, type: 'same' },
      'type',
    ),
  },
  {
    id: 'language-unknown',
    title: 'the language of a resource is no language tag',
    rule: binding('Resource.language', 'all-languages'),
    code: 'code-invalid',
    plant: setting(all(), 'language', 'english-language'),
  },
  {
    id: 'language-with-underscore',
    title: 'a language tag has an underscore',
    rule: binding('Resource.language', 'all-languages'),
    code: 'code-invalid',
    plant: setting(all(), 'language', 'en_GB'),
  },
  unknownIn('data-absent-reason', 'dataAbsentReason', 'forgotten'),
  unknownIn('observation-category', 'category', 'examination'),
  unknownIn('v3-ObservationInterpretation', 'interpretation', 'NRM'),
  unknownIn('v3-DataOperation', 'activity', 'SIGNED'),
  unknownIn('provenance-participant-type', 'type', 'writer'),
  unknownIn('list-empty-reason', 'emptyReason', 'forgotten'),
  unknownIn('v3-ActCode', 'class', 'AMBULANT'),
  otherDisplay('data-absent-reason', 'dataAbsentReason', 'Lost'),
  otherDisplay('observation-category', 'category', 'Laboratory'),
  otherDisplay('v3-ObservationInterpretation', 'interpretation', 'Critical high'),
  otherDisplay('v3-DataOperation', 'activity', 'delete'),
  otherDisplay('provenance-participant-type', 'type', 'Informant'),
  otherDisplay('list-empty-reason', 'emptyReason', 'Withheld'),
  otherDisplay('v3-ActCode', 'class', 'emergency'),
  {
    id: 'system-is-value-set',
    title: 'a coding names a value set as its code system',
    rule: codingRule,
    code: 'invalid',
    plant: inCoding('observation-category', 'category', (coding) => {
      coding['system'] = 'http://terminology.hl7.org/ValueSet/observation-category';
      return ['system'];
    }),
  },
  {
    id: 'system-not-absolute',
    title: 'the system of a coding is no absolute URI',
    rule: codingRule,
    code: 'value',
    plant: inCoding('observation-category', 'category', (coding) => {
      coding['system'] = 'observation-category';
      return ['system'];
    }),
  },
  {
    id: 'system-bare-oid',
    title: 'the system of a coding is an OID without urn:oid:',
    rule: codingRule,
    code: 'value',
    plant: inCoding('v3-ObservationInterpretation', 'interpretation', (coding) => {
      coding['system'] = '2.16.840.1.113883.5.83';
      return ['system'];
    }),
  },
  {
    id: 'system-in-words',
    title: 'the system of a coding is an abbreviation',
    rule: codingRule,
    code: 'value',
    plant: inSystem('http://loinc.org', (coding) => {
      coding['system'] = 'LOINC';
      return ['system'];
    }),
  },
  {
    id: 'snomed-with-https',
    title: 'SNOMED CT is named by a URL that is not its own',
    rule: ['SNOMED CT', 'https://terminology.hl7.org/SNOMEDCT.html'],
    code: 'code-invalid',
    plant: inSystem('http://snomed.info/sct', (coding) => {
      coding['system'] = 'https://snomed.info/sct';
      return ['system'];
    }),
  },
  {
    id: 'loinc-with-slash',
    title: 'LOINC is named by a URL that is not its own',
    rule: ['LOINC', 'https://terminology.hl7.org/LOINC.html'],
    code: 'code-invalid',
    plant: inSystem('http://loinc.org', (coding) => {
      coding['system'] = 'http://loinc.org/';
      return ['system'];
    }),
  },
  {
    id: 'snomed-check-digit',
    title: 'the check digit of a SNOMED CT id is wrong',
    rule: ['SCTID check digit', 'https://terminology.hl7.org/SNOMEDCT.html'],
    code: 'code-invalid',
    plant: inSystem('http://snomed.info/sct', (coding) => {
      coding['code'] = nextDigit(String(coding['code']));
      delete coding['display'];
      return ['code'];
    }),
  },
  {
    id: 'loinc-check-digit',
    title: 'the check digit of a LOINC code is wrong',
    rule: ['LOINC check digit', 'https://terminology.hl7.org/LOINC.html'],
    code: 'code-invalid',
    plant: inSystem('http://loinc.org', (coding) => {
      coding['code'] = nextDigit(String(coding['code']));
      delete coding['display'];
      return ['code'];
    }),
  },
]);

/** A code outside the required list of an element of a resource. */
function outside(
  path: string,
  valueSet: string,
  code: string,
  versions?: readonly FhirVersion[],
): DataFault {
  const [type = '', property = ''] = path.split('.');
  const row = within(path, valueSet, typeHaving(type, property), property, code);
  return versions === undefined ? row : { ...row, versions };
}

function within(
  path: string,
  valueSet: string,
  find: (bundle: JsonObject) => readonly Place[],
  property: string,
  code: string,
): DataFault {
  return {
    id: `${kebab(path)}-outside-list`,
    title: `a ${path} outside the required list`,
    rule: binding(path, valueSet),
    code: 'code-invalid',
    plant: setting(find, property, code),
  };
}

/** A code that its code system, which is complete, does not have. */
function unknownIn(system: string, property: string, code: string): DataFault {
  return {
    id: `unknown-code-in-${system.toLowerCase()}`,
    title: `a code that the code system ${system} does not have`,
    rule: codeSystem(system),
    code: 'code-invalid',
    plant: inCoding(system, property, (coding) => {
      coding['code'] = code;
      delete coding['display'];
      return ['code'];
    }),
  };
}

/** The words of another code of the same system. */
function otherDisplay(system: string, property: string, display: string): DataFault {
  return {
    id: `other-display-in-${system.toLowerCase()}`,
    title: `a code of ${system} with the display of another`,
    rule: section('Coding.display', 'datatypes.html#Coding'),
    code: 'invalid',
    plant: inCoding(system, property, (coding) => {
      coding['display'] = display;
      return ['display'];
    }),
  };
}

type Change = (coding: JsonObject) => (string | number)[];

/** Changes one coding of one of HL7's systems, in a concept or coding under this property. */
function inCoding(system: string, property: string, change: Change): DataFault['plant'] {
  return (bundle, random) => {
    const holders = every(property)(bundle);
    const codings = [
      ...holders,
      ...holders.flatMap(({ object, path }) => items(object['coding'], [...path, 'coding'])),
    ];
    const wanted = `${terminology}/${system}`;
    return inOne(
      codings.filter(({ object }) => object['system'] === wanted),
      random,
      change,
    );
  };
}

/** Changes one coding of a system, wherever it stands. */
function inSystem(system: string, change: Change): DataFault['plant'] {
  return (bundle, random) =>
    inOne(
      every('coding')(bundle).filter(({ object }) => object['system'] === system),
      random,
      change,
    );
}

/** The same number with its last digit, the check digit, one higher. */
function nextDigit(code: string): string {
  return code.replace(/\d$/, (digit) => String((Number(digit) + 1) % 10));
}

function kebab(path: string): string {
  return path
    .replaceAll('.', '-')
    .replace(/[A-Z]/g, (letter, at) => `${at ? '-' : ''}${letter.toLowerCase()}`)
    .replaceAll('--', '-');
}
