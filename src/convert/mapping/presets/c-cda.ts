import { ACT_CODE, LOINC, SNOMED } from '../../../fhir/names/systems.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import { LOINC_OID } from '../../cda/names.ts';
import type { PresetMapping } from '../mapping.ts';
import {
  codedTargets,
  deniedTargets,
  snomedSides,
  snomedWords,
  ucumUnits,
} from './published-codes.ts';
import { examSections, sectionNotes } from './sections.ts';

/** OIDs of code systems. @see https://terminology.hl7.org/external_terminologies.html */
const SNOMED_OID = '2.16.840.1.113883.6.96';
const systems = new Map([
  [SNOMED, SNOMED_OID],
  [LOINC, LOINC_OID],
  [ACT_CODE, '2.16.840.1.113883.5.4'],
]);

/** SNOMED CT Laterality, and the retired name that older documents have for it. */
const lateralityNames = ['272741003', '78615007'] as const;

const header = 'ClinicalDocument';
const role = `${header}/recordTarget/patientRole`;
const visit = `${header}/componentOf/encompassingEncounter/effectiveTime`;
const event = `${header}/documentationOf/serviceEvent`;
const written = `${header}/effectiveTime/@value`;
const authored = `${header}/author/time/@value`;
const author = `${header}/author/assignedAuthor`;

/**
 * C-CDA R1.1 and R2.1: the US Realm Header (2.16.840.1.113883.10.20.22.1.1) and the sections of an
 * examination. The document id with its time names the exam; each number of the patient stands under
 * its own OID. A narrative is a note of its section and is never read as codes; an entry is coded
 * where its codes mean exactly one row of the tables, and is text otherwise.
 */
export function cCda(catalogue: Catalogue): Omit<PresetMapping, 'format' | 'use'> {
  return {
    source: { syntax: 'cda', sections: examSections.map(({ code }) => code) },
    exam: {
      id: {
        prefix: 'cda',
        from: [[`${header}/id/@root`, `${header}/id/@extension`, written, authored]],
        also: [`${header}/id/@extension`, written],
      },
      status: { value: 'final' },
      subject: {
        identifiers: [
          { from: `${role}/id/@extension`, system: 'urn:oid:', oidFrom: `${role}/id/@root` },
        ],
        family: `${role}/patient/name/family`,
        given: `${role}/patient/name/given`,
        name: `${role}/patient/name`,
        birthDate: `${role}/patient/birthTime/@value`,
        gender: {
          from: `${role}/patient/administrativeGenderCode/@code`,
          // Code system v3-AdministrativeGender of HL7 terminology.
          words: { F: 'female', M: 'male', UN: 'other' },
        },
      },
      performed: {
        start: {
          // Not the service event: in a summary of care it is the whole time of care.
          from: [`${visit}/@value`, `${visit}/low/@value`, written, authored],
        },
      },
      recorded: { from: { from: [written, authored] }, timeOfDay: '00:00' },
      examiner: {
        name: [
          { join: [`${author}/assignedPerson/name/given`, `${author}/assignedPerson/name/family`] },
          `${author}/assignedPerson/name`,
          `${author}/representedOrganization/name`,
          `${author}/assignedAuthoringDevice/softwareName`,
          `${event}/performer/assignedEntity/assignedPerson/name/family`,
        ],
        fixed: { name: 'the author of the document' },
      },
      protocol: { id: 'full', version: '1.0.0' },
    },
    items: [
      {
        kind: 'section',
        code: ['section/code/@code'],
        value: 'section/text',
        note: 'section/title',
        map: sectionNotes(),
        otherwise: { kind: 'note' },
      },
      {
        kind: 'other-section',
        code: ['section/code/@code'],
        value: 'section/text',
        note: 'section/title',
        map: {},
        otherwise: { kind: 'note' },
      },
      ...entryItems(catalogue),
    ],
    sides: snomedSides(),
    regions: snomedWords('regions', catalogue),
    methods: snomedWords('methods', catalogue),
    units: ucumUnits(catalogue),
    layout: [...sectionLayout, ...entryKinds.flatMap(entryLayout)],
  } as Omit<PresetMapping, 'format' | 'use'>; // words are codes of the catalogue, sides among them
}

const entryKinds = ['observation', 'procedure', 'act', 'organizer'] as const;

/** Each kind of entry, stated and negated; observations alone are coded. */
function entryItems(catalogue: Catalogue): object[] {
  return entryKinds.flatMap((name) =>
    [name, `negated-${name}`].map((kind) => {
      const site = `${name}/targetSiteCode`;
      const shared = {
        kind,
        code: [`${name}/code/@codeSystem`, `${name}/code/@code`, `${name}/value/@codeSystem`],
        value: `${name}/value`,
      };
      if (name !== 'observation') return { ...shared, map: {} };
      return {
        ...shared,
        region: { from: `${site}/@code`, where: { field: `${site}/@codeSystem`, is: SNOMED_OID } },
        side: {
          from: `${site}/qualifier/value/@code`,
          where: { field: `${site}/qualifier/name/@code`, is: lateralityNames },
        },
        method: `${name}/methodCode/@code`,
        unit: `${name}/value/@unit`,
        at: { from: [`${name}/effectiveTime/@value`, `${name}/effectiveTime/low/@value`] },
        map: kind === name ? codedTargets(systems, catalogue) : deniedTargets(systems, catalogue),
      };
    }),
  );
}

const sectionLayout: readonly string[] = [
  'templateId/@root',
  'templateId/@extension',
  'id/@root',
  'id/@extension',
  'code/@codeSystem',
  'code/@codeSystemName',
  'code/@displayName',
  'text/reference/@value',
].map((name) => `section/${name}`);

/** What only orders or types an entry. */
function entryLayout(name: string): string[] {
  return [
    'templateId/@root',
    'templateId/@extension',
    'id/@root',
    'id/@extension',
    'code/@codeSystemName',
    'value/@codeSystemName',
    'value/@xsi:type',
    'targetSiteCode/@codeSystemName',
    'targetSiteCode/qualifier/name/@codeSystem',
    'targetSiteCode/qualifier/name/@codeSystemName',
    'targetSiteCode/qualifier/value/@codeSystem',
    'targetSiteCode/qualifier/value/@codeSystemName',
    'methodCode/@codeSystem',
    'methodCode/@codeSystemName',
    'text/reference/@value',
  ].map((part) => `${name}/${part}`);
}
