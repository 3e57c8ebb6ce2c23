import { dataFaults, type Fault, type JsonObject } from '../fault.ts';
import { adding, all, every, inOne, type Place, setting } from '../place.ts';
import { binding, invariant, primitive, section } from '../rules.ts';

const published = 'http://hl7.org/fhir/StructureDefinition';
const laterality = `${published}/observation-structureLaterality`;
const absent = `${published}/data-absent-reason`;
const definition = section('extension definitions', 'extensibility.html#extension');

/** Faults of extensions. */
export const extensionFaults: readonly Fault[] = dataFaults('extension', [
  {
    id: 'extension-of-nothing',
    title: 'an extension with neither value nor extensions',
    rule: invariant('ext-1', 'Extension'),
    code: 'invariant',
    plant: adding(all('Observation'), 'extension', { url: absent }),
  },
  {
    id: 'extension-of-both',
    title: 'an extension with a value and extensions',
    rule: invariant('ext-1', 'Extension'),
    code: 'invariant',
    plant: adding(all('Observation'), 'extension', {
      url: 'https://harbour-clinic.example/extensions/remark',
      valueString: 'left',
      extension: [{ url: 'side', valueCode: 'left' }],
    }),
  },
  {
    id: 'extension-with-two-values',
    title: 'an extension with two values',
    rule: section('value[x]', 'formats.html#choice'),
    code: 'structure',
    plant: adding(all('Observation'), 'extension', {
      url: 'https://harbour-clinic.example/extensions/remark',
      valueString: 'left',
      valueCode: 'left',
    }),
  },
  {
    id: 'extension-url-relative',
    title: 'the URL of an extension is relative',
    rule: section('Extension.url', 'extensibility.html#extension'),
    code: 'value',
    plant: adding(all('Observation'), 'extension', { url: 'remark', valueString: 'left' }),
  },
  {
    id: 'extension-url-with-space',
    title: 'the URL of an extension has a space',
    rule: primitive('uri'),
    code: 'value',
    plant: adding(all('Observation'), 'extension', {
      url: 'https://harbour-clinic.example/extensions/my remark',
      valueString: 'left',
    }),
  },
  {
    id: 'extension-value-of-unknown-type',
    title: 'the value of an extension names a type that FHIR does not define',
    rule: section('Extension.value[x]', 'extensibility.html#extension'),
    code: 'structure',
    plant: adding(all('Observation'), 'extension', {
      url: 'https://harbour-clinic.example/extensions/remark',
      valueText: 'left',
    }),
  },
  {
    id: 'extension-as-object',
    title: 'one extension stands where a list of them must',
    rule: section('json', 'json.html'),
    code: 'structure',
    plant: setting(all('Observation'), 'extension', {
      url: 'https://harbour-clinic.example/extensions/remark',
      valueString: 'left',
    }),
  },
  {
    id: 'laterality-as-text',
    title: 'the published extension for the side has a text as value',
    rule: definition,
    code: 'structure',
    plant: siteExtension({ url: laterality, valueString: 'left' }),
  },
  {
    id: 'laterality-in-wrong-place',
    title: 'the published extension for the side of a body site stands on a patient',
    rule: section('context of extensions', 'defining-extensions.html#context'),
    code: 'extension',
    plant: adding(all('Patient'), 'extension', {
      url: laterality,
      valueCodeableConcept: { text: 'left' },
    }),
  },
  {
    id: 'absent-reason-as-text',
    title: 'the published extension for a missing value has a text as value',
    rule: definition,
    code: 'structure',
    plant: adding(all('Patient'), 'extension', { url: absent, valueString: 'unknown' }),
  },
  {
    id: 'absent-reason-unknown',
    title: 'the published extension for a missing value has a code outside its list',
    rule: binding('data-absent-reason', 'data-absent-reason'),
    code: 'code-invalid',
    plant: (bundle, random) =>
      inOne(all('Patient')(bundle), random, (object) => {
        delete object['birthDate'];
        object['_birthDate'] = { extension: [{ url: absent, valueCode: 'forgotten' }] };
        return ['_birthDate', 'extension', 0, 'valueCode'];
      }),
  },
  {
    id: 'unknown-core-extension',
    title: 'an extension that HL7 is said to define and does not',
    rule: section('Extension.url', 'extensibility-definitions.html#Extension.url'),
    code: 'extension',
    plant: adding(all('Observation'), 'extension', {
      url: `${published}/observation-side`,
      valueCode: 'left',
    }),
  },
  {
    id: 'modifier-extension-unknown',
    title: 'a modifier extension that nobody can know turns the meaning of an observation',
    rule: section('modifier extensions', 'extensibility.html#modifierExtension'),
    severity: 'warning',
    code: 'extension',
    plant: adding(all('Observation'), 'modifierExtension', {
      url: 'https://harbour-clinic.example/extensions/not',
      valueBoolean: true,
    }),
  },
  {
    id: 'modifier-extension-of-coding',
    title: 'a data type has a modifier extension, which only resources and their parts have',
    rule: section('modifier extensions', 'extensibility.html#modifierExtension'),
    code: 'structure',
    plant: adding(every('coding'), 'modifierExtension', {
      url: 'https://harbour-clinic.example/extensions/not',
      valueBoolean: true,
    }),
  },
  {
    id: 'extension-with-fault-in-value',
    title: 'the value of an extension is not a date',
    rule: primitive('dateTime'),
    code: 'value',
    plant: adding(all('Observation'), 'extension', {
      url: 'https://harbour-clinic.example/extensions/seen',
      valueDateTime: '2031-02-30',
    }),
  },
]);

/** Puts an extension on the body site of one observation, in place of what stands there. */
function siteExtension(extension: JsonObject) {
  return setting(
    (bundle): Place[] => every('bodySite')(bundle).filter(inObservation(bundle)),
    'extension',
    [extension],
  );
}

function inObservation(bundle: JsonObject): (place: Place) => boolean {
  const observations = new Set(all('Observation')(bundle).map(({ path }) => path[1]));
  return ({ path }) => observations.has(path[1] ?? '');
}
