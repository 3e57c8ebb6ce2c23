import type { NoteTarget } from '../target.ts';

/** A section of a document that tells what was found or asked, by its LOINC code. */
interface ExamSection {
  readonly code: string;
  /** Where all of its text is about one place of ours. */
  readonly region?: string;
  /** Published file with the code. */
  readonly source: string;
}

const ig = (page: string): string => `C-CDA 4.0, StructureDefinition-${page}`;
const documents = 'HL7 C-CDA examples, Referral Note 2.1';
const reports = 'hl7.fhir.r4.expansions@4.0.1 ValueSet-report-codes.json';

/** Sections beside "Physical findings" that C-CDA has for an examination, and those for its parts. */
export const examSections: readonly ExamSection[] = [
  { code: '10210-3', source: ig('GeneralStatusSection') },
  { code: '10184-0', source: ig('HospitalDischargePhysicalSection') },
  { code: '61149-1', source: ig('ObjectiveSection') },
  { code: '10187-3', source: ig('ReviewofSystemsSection') },
  { code: '8709-8', source: documents },
  { code: '10206-1', source: reports },
  { code: '10199-8', source: reports },
  { code: '10197-2', region: 'eyes', source: reports },
  { code: '10195-6', region: 'ears', source: reports },
  { code: '10203-8', region: 'nose', source: reports },
  { code: '10201-2', source: reports },
  { code: '10202-0', source: reports },
  {
    code: '11411-6',
    region: 'neck',
    source: 'https://smt.esante.gouv.fr/fhir/ValueSet/jdv-section-document-cisis|20260716085852',
  },
  {
    code: '32479-8',
    region: 'thyroid',
    source: 'ValueSet vs-meta-physical-observations (Thailand)',
  },
];

/** Notes of these sections, by region where the section has one. */
export function sectionNotes(): { readonly [code: string]: NoteTarget } {
  return Object.fromEntries(
    examSections.flatMap(({ code, region }) =>
      region === undefined ? [] : [[code, { kind: 'note', region, cut: 'headings' } as const]],
    ),
  );
}
