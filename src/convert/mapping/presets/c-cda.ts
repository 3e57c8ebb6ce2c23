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
        otherwise: { kind: 'note', cut: 'headings' },
      },
      {
        kind: 'other-section',
        code: ['section/code/@code'],
        value: 'section/text',
        note: 'section/title',
        map: {},
        otherwise: { kind: 'note', cut: 'headings' },
      },
      {
        kind: 'nonXMLBody',
        code: ['nonXMLBody/text/@mediaType'],
        value: 'nonXMLBody/text',
        map: {},
        otherwise: { kind: 'note', cut: 'headings' },
      },
      ...entryItems(catalogue),
    ],
    sides: snomedSides(),
    regions: snomedWords('regions', catalogue),
    methods: snomedWords('methods', catalogue),
    units: ucumUnits(catalogue),
    layout: [
      'nonXMLBody/text/@representation',
      ...sectionLayout,
      ...entryKinds.flatMap(entryLayout),
    ],
  } as Omit<PresetMapping, 'format' | 'use'>; // words are codes of the catalogue, sides among them
}

const entryKinds = ['observation', 'procedure', 'act', 'organizer'] as const;

/** Where the code of a question or an answer stands: itself, or as its translation into a known system. */
interface CodeAt {
  readonly code: string;
  readonly value: string;
  readonly where?: { readonly field: string; readonly is: string };
}

function codesAt(name: string): readonly (readonly [question: CodeAt, answer: CodeAt])[] {
  const question = { code: `${name}/code`, value: `${name}/code/@code` };
  const answer = { code: `${name}/value`, value: `${name}/value` };
  const translated = ({ code }: CodeAt, system: string): CodeAt => ({
    code: `${code}/translation`,
    value: `${code}/translation/@code`,
    where: { field: `${code}/translation/@codeSystem`, is: system },
  });
  const questions = [question, translated(question, SNOMED_OID), translated(question, LOINC_OID)];
  const answers = [answer, translated(answer, SNOMED_OID)];
  return questions.flatMap((one) => answers.map((other) => [one, other] as const));
}

/** Each kind of entry, stated and negated; observations alone are coded. */
function entryItems(catalogue: Catalogue): object[] {
  const targets = codedTargets(systems, catalogue);
  const denied = deniedTargets(systems, catalogue);
  return entryKinds.flatMap((name) =>
    [name, `negated-${name}`].flatMap((kind) => {
      const site = `${name}/targetSiteCode`;
      if (name !== 'observation') {
        const code = [
          `${name}/code/@codeSystem`,
          `${name}/code/@code`,
          `${name}/value/@codeSystem`,
        ];
        return [{ kind, code, value: `${name}/value`, map: {} }];
      }
      return codesAt(name).map(([asked, told]) => ({
        kind,
        code: [`${asked.code}/@codeSystem`, asked.value, `${told.code}/@codeSystem`],
        ...(asked.where !== undefined && { codeWhere: asked.where }),
        value: told.value,
        ...(told.where !== undefined && { valueWhere: told.where }),
        region: { from: `${site}/@code`, where: { field: `${site}/@codeSystem`, is: SNOMED_OID } },
        side: {
          from: `${site}/qualifier/value/@code`,
          where: { field: `${site}/qualifier/name/@code`, is: lateralityNames },
        },
        method: `${name}/methodCode/@code`,
        unit: `${name}/value/@unit`,
        at: { from: [`${name}/effectiveTime/@value`, `${name}/effectiveTime/low/@value`] },
        map: among(kind === name ? targets : denied, asked.where?.is, told.where?.is),
      }));
    }),
  );
}

/** Of the targets those that a question and an answer of these systems can mean. */
function among(
  targets: { readonly [key: string]: object },
  question = '',
  answer = '',
): { readonly [key: string]: object } {
  const [first, last] = [question && `${question}|`, answer && `|${answer}`];
  return Object.fromEntries(
    Object.entries(targets).filter(([key]) => key.startsWith(first) && key.endsWith(last)),
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
