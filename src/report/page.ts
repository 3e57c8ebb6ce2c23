import type { CheckResult } from '../checks/check-exam.ts';
import type { IssueLanguage } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { Key, Side } from '../model/primitive.ts';
import type { Statement } from '../model/statement.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import { time } from './dates.ts';
import { type Content, element, joined, words } from './html.ts';
import type { Teller } from './teller.ts';
import type { ReportWords } from './words/report-words.ts';

/** What every part of the page is made from. */
export interface Page {
  readonly exam: Exam;
  /** The exam compared with, where there is one. */
  readonly prior: Exam | undefined;
  /** The version of the record before the last step, where it is given. */
  readonly versionBefore: Exam | undefined;
  /** Exams before that one, newest first, whose figures are drawn beside today's. */
  readonly earlier: readonly Exam[];
  /** The caller knows that all exams are of one person. */
  readonly samePatient: boolean;
  readonly checks: CheckResult;
  readonly catalogue: Catalogue;
  readonly teller: Teller;
  readonly labels: ReportWords;
  /** Sentences of what does not agree; English where it is not given. */
  readonly issueLanguage: IssueLanguage | undefined;
  /** Numbers of what is abnormal, alike in the text and on the drawing. */
  readonly numbers: ReadonlyMap<Key, number>;
}

/** What rules and protocols say, which is in English whatever the language of the page. */
export function inEnglish(text: string): Content {
  return element('span', { lang: 'en' }, text);
}

/** Note of a statement and what it was carried over from, below what it says. */
export function remarks({ labels }: Page, { note, carried }: Statement): Content {
  if (note === undefined && carried === undefined) return undefined;
  return joined(
    note !== undefined && element('div', { class: 'note' }, words(note)),
    carried !== undefined &&
      element(
        'div',
        { class: 'origin' },
        `${carried.confirmed ? labels.confirmed : labels.carried} `,
        time(carried.at, labels.dates),
      ),
  );
}

/** Parts with a separator between them; parts that are not there are left out. */
export function separated(parts: readonly Content[], separator = '; '): Content {
  const there = parts.filter((part) => part !== undefined && part !== false && part !== '');
  if (there.length === 0) return undefined;
  return joined(there.map((part, at) => (at === 0 ? part : [separator, part])));
}

/** Methods in brackets, behind what was seen by them. */
export function methodText(
  { teller }: Page,
  { methods }: { readonly methods?: readonly string[] },
): string {
  if (methods === undefined) return '';
  return ` [${methods.map((code) => teller.display('methods', code)).join(', ')}]`;
}

/** Region and side behind what is told of them; a side alone where no region is named. */
export function atPlace(
  { teller }: Page,
  { region, side }: { readonly region?: string; readonly side?: Side },
): string {
  if (region !== undefined) return ` – ${teller.place(region, side)}`;
  return side === undefined ? '' : `, ${teller.side(side)}`;
}
