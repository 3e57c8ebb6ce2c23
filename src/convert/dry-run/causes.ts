import type { Issue, IssueCode } from '../../issues/issue.ts';
import { pathText } from '../../issues/path.ts';
import type { TriedExam } from './dry-run.ts';

/** Why exams would go to quarantine. */
export interface Cause {
  readonly code: IssueCode;
  readonly message: string;
  /** The form that would have been accepted. */
  readonly expected?: string;
  /** Part of the exam that it is about, without places in lists. */
  readonly about: string;
  readonly count: number;
  /** What can be done. */
  readonly cure: string;
}

const stateField =
  'State the field in the mapping, a further one to fall back on, or a fixed value where one holds for the whole export.';

/**
 * What a person can do, by code (common practice, no source). Nothing here is done by itself, and nothing
 * makes a value of what cannot be read.
 */
const cures: { readonly [Code in IssueCode]?: string } = {
  'duplicate-exam':
    'Two exams have one id: add the field that tells them apart to exam.id.also, or group their rows by groupBy.',
  'damaged-value':
    'A spreadsheet has changed this value: export it anew as text, or take another field.',
  'unreadable-date': 'State the form of these dates in dates.formats, or mend them.',
  'impossible-date': 'This day does not exist: mend it in the quarantine file.',
  'missing-zone': 'State in dates.zone where the times of the export were written.',
  'missing-field': stateField,
  'missing-property': stateField,
  'unknown-word': 'List the word in the mapping with what it means.',
  'conflicting-fields':
    'Two fields say different things: say by where which of them is meant, or mend the record.',
  'malformed-record': 'The row has another number of cells than the headings: mend its quoting.',
  'unclosed-quote': 'A quotation mark is not closed: mend it in the quarantine file.',
  'too-large': 'Divide the record, or look for a quotation mark that is not closed before it.',
};

const otherwise =
  'Mend the record in the quarantine file and convert that with --quarantine, or change what the mapping says of it.';

/** The first error of each exam that would go to quarantine, counted by what it is about. */
export function causesOf(exams: readonly TriedExam[]): readonly Cause[] {
  const causes = new Map<string, Cause>();
  for (const { exam, issues } of exams) {
    const first = issues.find(({ severity }) => severity === 'error');
    if (exam !== undefined || first === undefined) continue;
    const cause = causeOf(first);
    const key = JSON.stringify([cause.code, cause.message, cause.about]);
    causes.set(key, { ...cause, count: (causes.get(key)?.count ?? 0) + 1 });
  }
  return [...causes.values()].sort((one, other) => other.count - one.count);
}

function causeOf({ code, message, expected, path }: Issue): Cause {
  return {
    code,
    message,
    ...(expected !== undefined && { expected }),
    about: pathText(path.filter((step) => typeof step === 'string')),
    count: 1,
    cure: cures[code] ?? otherwise,
  };
}
