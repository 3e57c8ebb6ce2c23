import { sayingsOf, standingOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import type { Page } from '../report/page.ts';
import type { Limits, PairedAnswers } from './agreement.ts';
import { figureOf } from './figure.ts';
import { sorted } from './sums/add-sums.ts';
import { type DifferenceSums, noDifferences, withDifference } from './sums/differences.ts';
import type { AuditSums } from './sums/sums.ts';

/** Exams in a row among which two of one person and day are looked for: what is kept is bounded. */
const KEPT = 500;

interface Kept {
  readonly examiner: string;
  readonly signs: ReadonlyMap<string, { readonly code: string; readonly there: boolean }>;
  readonly figures: ReadonlyMap<string, { readonly code: string; readonly value: string }>;
}

export interface Agreement {
  /** Pairs of exams of one person on one day by two examiners. */
  readonly pairs: number;
  readonly signs: readonly (PairedAnswers & {
    readonly code: string;
    readonly kappa: number | undefined;
  })[];
  readonly measures: readonly (Limits & { readonly code: string })[];
}

/** Finds two exams of one person and day by two examiners, and adds up how far they agree. */
export class PairedExams {
  readonly #kept = new Map<string, Kept>();
  readonly #signs = new Map<string, PairedAnswers>();
  readonly #measures = new Map<string, DifferenceSums>();
  #pairs = 0;

  add(exam: Exam, page: Page): void {
    const who = personAndDay(exam);
    if (who === undefined) return;
    const here = kept(exam, page);
    const other = this.#kept.get(who);
    if (other !== undefined && other.examiner !== here.examiner) {
      this.#pairs += 1;
      this.#compare(other, here);
      this.#kept.delete(who);
      return;
    }
    this.#kept.set(who, here);
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > KEPT && oldest !== undefined) this.#kept.delete(oldest);
  }

  #compare(first: Kept, second: Kept): void {
    for (const [place, { code, there }] of first.signs) {
      const also = second.signs.get(place)?.there;
      if (also === undefined) continue;
      const answers = this.#signs.get(code) ?? { both: 0, first: 0, second: 0, neither: 0 };
      const cell = there ? (also ? 'both' : 'first') : also ? 'second' : 'neither';
      this.#signs.set(code, { ...answers, [cell]: answers[cell] + 1 });
    }
    for (const [place, { code, value }] of first.figures) {
      const also = second.figures.get(place)?.value;
      if (also === undefined) continue;
      const differences = this.#measures.get(code) ?? noDifferences;
      this.#measures.set(code, withDifference(differences, value, also));
    }
  }

  sums(): Pick<AuditSums, 'pairs' | 'signs' | 'measures'> {
    return {
      pairs: this.#pairs,
      signs: sorted(this.#signs),
      measures: sorted(this.#measures),
    };
  }
}

/** By a number or reference of the person: a name and a date of birth are not enough to call two one. */
function personAndDay({ subject, performed }: Exam): string | undefined {
  const [identifier] = subject.identifiers ?? [];
  const who = identifier ? `${identifier.system}|${identifier.value}` : subject.reference;
  return who === undefined ? undefined : `${who}@${performed.start.slice(0, 10)}`;
}

function kept(exam: Exam, page: Page): Kept {
  const signs = new Map<string, { code: string; there: boolean }>();
  const figures = new Map<string, { code: string; value: string }>();
  for (const statement of exam.statements) {
    const { region, side } = standingOf(statement, page.catalogue);
    for (const { of, polarity, unconfirmed } of sayingsOf(statement, page.catalogue)) {
      const decided = polarity === 'states' || polarity === 'denies';
      if (of.table !== 'findings' || unconfirmed || !decided) continue;
      signs.set(`${of.code}/${region}/${side}`, { code: of.code, there: polarity === 'states' });
    }
    const figure = figureOf(statement, page);
    if (figure === undefined) continue;
    const { measure, name, unit, value } = figure;
    figures.set(`${name}/${region}/${side}/${unit}`, { code: measure, value });
  }
  return { examiner: examinerOf(exam.examiners[0]), signs, figures };
}

function examinerOf({ identifiers, reference, key }: Exam['examiners'][0]): string {
  const [identifier] = identifiers ?? [];
  return identifier ? `${identifier.system}|${identifier.value}` : (reference ?? key);
}
