import type { HeadingPlace } from '../../convert/mapping/mapping.ts';
import type { Proposal } from '../../convert/proposals/proposal.ts';
import { proposeFindings } from '../../convert/proposals/propose.ts';
import { append } from '../../data/append.ts';
import { isPlainObject } from '../../data/plain-data.ts';
import type { Issue } from '../../issues/issue.ts';
import { isNote } from '../../kinds/note/convert.ts';
import type { Exam } from '../../model/exam.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

/** The proposals of one note, with its text. */
export interface NoteRows {
  readonly text: string;
  readonly proposals: readonly Proposal[];
}

/** The notes of one exam that ask something. */
export interface ExamRows {
  readonly exam: Exam;
  readonly notes: readonly NoteRows[];
}

export interface Rows {
  readonly exams: readonly ExamRows[];
  /** Proposals on the page, and those that wait for the next. */
  readonly asked: number;
  readonly left: number;
  readonly issues: readonly Issue[];
}

/** What is to be asked of each exam: its proposals without those that were decided before. */
export function rowsOf(
  exams: Iterable<Exam>,
  decided: readonly Proposal[],
  options: {
    readonly catalogue: Catalogue;
    readonly headings?: { readonly [heading: string]: HeadingPlace };
    /** Proposals after which no further exam is begun. */
    readonly most: number;
  },
): Rows {
  const known = new Set(decided.flatMap(nameOf));
  const all: ExamRows[] = [];
  const issues: Issue[] = [];
  let asked = 0;
  let left = 0;
  for (const exam of exams) {
    const { value, issues: found } = proposeFindings(exam, options);
    append(issues, found);
    const open = (value ?? []).filter((one) => nameOf(one).every((name) => !known.has(name)));
    if (open.length === 0) continue;
    if (asked >= options.most) left += open.length;
    else {
      asked += open.length;
      all.push({ exam, notes: notesOf(exam, open) });
    }
  }
  return { exams: all, asked, left, issues };
}

/** Which words of which note it is about; none of a proposal that does not say so. */
function nameOf({ exam, note, reasons }: Proposal): readonly string[] {
  const words: unknown = isPlainObject(reasons) ? reasons.words : undefined;
  return isPlainObject(words) ? [JSON.stringify([exam, note, words['start'], words['end']])] : [];
}

function notesOf({ statements }: Exam, open: readonly Proposal[]): readonly NoteRows[] {
  const byNote = new Map<string, Proposal[]>();
  for (const one of open) {
    const same = byNote.get(one.note) ?? [];
    byNote.set(one.note, same);
    same.push(one);
  }
  return statements.flatMap((statement) => {
    const proposals = byNote.get(statement.key);
    if (proposals === undefined || !isNote(statement)) return [];
    return [{ text: statement.text, proposals }];
  });
}
