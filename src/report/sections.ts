import type { ReportWords } from './words/report-words.ts';

/** Sections of signs and regions, in the order of the page; the headings are words of the same name. */
export const signSections = ['negatives', 'normal', 'usual'] as const;

/** Sections of what was scored, told and written down. */
export const wordSections = ['scores', 'symptoms', 'notes', 'pictures'] as const;

/** Sections that stand on the first page and have parts of their own. */
export type FirstSection = 'abnormal' | 'notExamined' | 'undecided';

/** Tables with a column a side, in the order of the page. */
export const sideTables = ['sensation', 'tests', 'measures'] as const;

export type ListSection =
  | (typeof signSections)[number]
  | (typeof wordSections)[number]
  | FirstSection;
export type SideTable = (typeof sideTables)[number];

/** Id of a section in the page. */
export function sectionId(section: ListSection | SideTable): string {
  return section === 'notExamined' ? 'not-examined' : section;
}

export function headingOf(section: ListSection | SideTable, labels: ReportWords): string {
  return labels[section];
}
