import { LOINC, SNOMED } from '../../../fhir/names/systems.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import type { ExamFields } from '../exam-fields.ts';
import type { PresetMapping } from '../mapping.ts';
import { codedTargets, snomedSides, snomedWords, ucumUnits } from './published-codes.ts';
import { examSections, sectionNotes } from './sections.ts';

/** Names of code systems in CWE.3: table 0396. @see https://terminology.hl7.org/CodeSystem-v2-0396.html */
const systems = new Map([
  [SNOMED, 'SCT'],
  [LOINC, 'LN'],
]);

type Preset = Omit<PresetMapping, 'format' | 'use'>;

/**
 * ORU^R01 with one exam an order, by HL7's v2-to-FHIR segment maps: PID to Patient, OBR to
 * DiagnosticReport, OBX to Observation. The filler or placer number names the exam, or else the
 * message. A report that does not say that it is final is preliminary.
 */
export function oru(catalogue: Catalogue): Preset {
  return preset(catalogue, {
    id: { prefix: 'oru', from: [['OBR-3', 'ORC-3', 'OBR-2', 'ORC-2', 'MSH-10']] },
    status: { from: 'OBR-25', value: 'preliminary' },
    subject,
    performed: { start: { from: ['OBR-7', 'OBR-22', 'MSH-7'] } },
    recorded: { from: { from: ['OBR-22', 'MSH-7'] }, timeOfDay: '00:00' },
    examiner: {
      // Principal result interpreter: NDL.1 is CNN, with number, family and given name.
      name: [
        { join: ['OBR-32.1.3', 'OBR-32.1.2'] },
        'OBR-32',
        // Technician, whom the maps name as a performer.
        { join: ['OBR-34.1.3', 'OBR-34.1.2'] },
      ],
      fixed: { name: 'the sender of the message' },
    },
    // CWE.2 is the text of the reason, CWE.1 its code.
    indication: ['OBR-31.2', 'OBR-31', 'OBR-13'],
    protocol: { id: 'full', version: '1.0.0' },
  });
}

/** MDM^T02: one document is one exam, TXA to DocumentReference. */
export function mdm(catalogue: Catalogue): Preset {
  return preset(catalogue, {
    id: { prefix: 'mdm', from: [['TXA-12', 'MSH-10']] },
    status: { from: 'TXA-17', value: 'preliminary' },
    subject,
    performed: { start: { from: ['TXA-4', 'PV1-44', 'TXA-6', 'MSH-7'] } },
    recorded: { from: { from: ['TXA-7', 'TXA-6', 'MSH-7'] }, timeOfDay: '00:00' },
    examiner: {
      // XCN: number, family and given name of originator, or of the primary activity provider.
      name: [
        { join: ['TXA-9.3', 'TXA-9.2'] },
        { join: ['TXA-5.3', 'TXA-5.2'] },
        // Whoever authenticated the document.
        { join: ['TXA-10.3', 'TXA-10.2'] },
      ],
      fixed: { name: 'the sender of the message' },
    },
    protocol: { id: 'full', version: '1.0.0' },
  });
}

const subject: ExamFields['subject'] = {
  // PID-3 is CX; CX.4.2 is the OID of the assigning authority where CX.4.3 says so.
  identifiers: [
    {
      from: 'PID-3',
      system: 'urn:oid:',
      oidFrom: 'PID-3.4.2',
    },
  ],
  family: 'PID-5',
  given: ['PID-5.2', 'PID-5.3'],
  birthDate: 'PID-7',
  gender: {
    from: 'PID-8',
    // Table 0001 by HL7's v2-to-FHIR concept map.
    words: { F: 'female', M: 'male', O: 'other', A: 'other', N: 'other', U: 'unknown' },
  },
};

function preset(catalogue: Catalogue, exam: ExamFields): Preset {
  const codes = { code: ['OBX-3.3', 'OBX-3', 'OBX-5.3'] };
  const asked = { kind: 'OBX', note: 'NTE-3' };
  const narratives = [...examSections.map(({ code }) => code), '29545-1'].map(
    (code) => [`LN|${code}|`, sectionNotes()[code] ?? { kind: 'note', cut: 'headings' }] as const,
  );
  return {
    source: { syntax: 'hl7v2', ...(exam.id.prefix === 'oru' && { orders: 'exams' }) },
    exam,
    items: [
      {
        // Text of any length is a note, with the words for what it is about.
        ...asked,
        ...codes,
        where: { field: 'OBX-2', is: ['TX', 'FT'] },
        value: 'OBX-5',
        map: Object.fromEntries(narratives),
        otherwise: { kind: 'note', cut: 'headings', noteFrom: 'OBX-3.2' },
      },
      {
        ...asked,
        ...codes,
        value: 'OBX-5',
        unit: 'OBX-6',
        region: { from: 'OBX-20', where: { field: 'OBX-20.3', is: 'SCT' } },
        side: { from: 'OBX-20', where: { field: 'OBX-20.3', is: ['HL70163', 'HL70495'] } },
        method: 'OBX-17',
        group: 'OBX-4',
        at: 'OBX-14',
        map: codedTargets(systems, catalogue),
      },
    ],
    sides: { ...snomedSides(), R: 'right', L: 'left', BIL: 'both' },
    regions: snomedWords('regions', catalogue),
    methods: snomedWords('methods', catalogue),
    units: ucumUnits(catalogue),
    layout: ['OBX-2'],
  } as Preset; // words are codes of the catalogue
}
