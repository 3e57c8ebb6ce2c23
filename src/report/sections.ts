import type { ReportWords } from './report-words.ts';

/** Sections of signs and regions, in the order of the page: each a list with a line a statement. */
export const regionSections = {
  positives: ({ positives }: ReportWords) => positives,
  suspected: ({ suspected }: ReportWords) => suspected,
  undecided: ({ undecided }: ReportWords) => undecided,
  negatives: ({ negatives }: ReportWords) => negatives,
  usual: ({ usual }: ReportWords) => usual,
  abnormal: ({ abnormal }: ReportWords) => abnormal,
  normal: ({ normal }: ReportWords) => normal,
  partial: ({ partial }: ReportWords) => partial,
  'not-examined': ({ notExamined }: ReportWords) => notExamined,
} as const;

/** What was taken over and not looked at again: apart from today's, with the time it was seen. */
export const takenOverSection = ({ takenOver }: ReportWords) => takenOver;

/** Tables with a column a side. In that of measurements the last column is the difference of the sides. */
export const sideTables = {
  sensation: ({ sensation }: ReportWords) => sensation,
  tests: ({ tests }: ReportWords) => tests,
  measures: ({ measures }: ReportWords) => measures,
} as const;

/** Lists of what was scored, told and written down. */
export const wordSections = {
  scores: ({ scores }: ReportWords) => scores,
  symptoms: ({ symptoms }: ReportWords) => symptoms,
  notes: ({ notes }: ReportWords) => notes,
  pictures: ({ pictures }: ReportWords) => pictures,
} as const;

export type ListSection = keyof typeof regionSections | keyof typeof wordSections;
export type SideTable = keyof typeof sideTables;
