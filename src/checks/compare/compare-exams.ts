import { append } from '../../data/append.ts';
import type { ComparedBy, ComparedExam, Verdict } from '../../kinds/facets/check.ts';
import { comparisonOf } from '../../kinds/registries/checks.ts';
import { subjectOf } from '../../kinds/registries/meanings.ts';
import type { Exam } from '../../model/exam.ts';
import type { Finding, Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExamIndex } from '../exam-index.ts';
import { listIn } from '../exam-index.ts';
import { daysBetween } from '../figures/time.ts';
import type { Limit } from '../settings/thresholds.ts';
import { type Comparable, comparablesOf } from './comparable.ts';
import type { Comparison } from './comparison.ts';

/** An exam with its statements in order. */
export interface Indexed {
  readonly exam: Exam;
  readonly index: ExamIndex;
}

/**
 * What became of everything that either exam states, in the order of this exam and then of what only
 * the prior one states. Statements are matched by what they are about, lesions by their tracking
 * key, never by their own keys. Silence is neither "gone" nor "new".
 */
export function compareExams(
  thisExam: Indexed,
  priorExam: Indexed,
  catalogue: Catalogue,
  skinChange: Limit | undefined,
): readonly Comparison[] {
  const now = withFeatures(thisExam, catalogue);
  const before = withFeatures(priorExam, catalogue);
  const current = comparablesOf(now.exam, now.index);
  const earlier = comparablesOf(before.exam, before.index);
  const loosely = looseNames(earlier);
  const comparisons: Comparison[] = [];
  for (const [identity, here] of current) {
    const there = earlier.get(identity) ?? [];
    const [a, b] = [here[0], there[0]];
    if (a === undefined) continue;
    if (here.length > 1 || there.length > 1) {
      append(
        comparisons,
        here.map((one) => comparison(one, undefined, severalOf)),
      );
    } else if (b === undefined) {
      comparisons.push(comparison(a, undefined, onlyNow(a, before, catalogue, loosely)));
    } else {
      const verdict = both(a, b, now, before, { catalogue, skinChange });
      comparisons.push(comparison(a, b, verdict, daysApart(now, a, before, b)));
    }
  }
  for (const [identity, there] of earlier) {
    if (current.has(identity)) continue;
    for (const one of there) {
      comparisons.push(comparison(undefined, one, onlyBefore(one, now, catalogue)));
    }
  }
  return comparisons;
}

const severalOf: Verdict = {
  change: 'not-comparable',
  reason: 'several of the kind at one place; without a tracking key they cannot be told apart',
};

function both(
  a: Comparable,
  b: Comparable,
  now: ComparedExam,
  before: ComparedExam,
  by: ComparedBy,
): Verdict {
  const { modality } = a;
  // Both are of one kind: they share an identity, and what has one is of a kind that is compared.
  const change = comparisonOf(a.statement)?.change(
    { statement: a.statement, exam: now.exam, modality },
    { statement: b.statement, exam: before.exam, modality },
    by,
  );
  return change ?? { change: 'not-comparable' };
}

/** Stated in this exam alone: new only where the prior exam denied it. */
function onlyNow(
  one: Comparable,
  before: ComparedExam,
  catalogue: Catalogue,
  loosely: ReadonlySet<string>,
): Verdict {
  const denial = deniedIn(one, before, catalogue);
  if (denial === 'denied') return { change: 'new' };
  if (loosely.has(one.loose)) return { change: 'not-comparable', reason: 'conditions differ' };
  return { change: 'not-comparable', reason: denial ?? 'the prior exam says nothing of it' };
}

/** Stated in the prior exam alone: gone only where this exam denies it. */
function onlyBefore(one: Comparable, now: ComparedExam, catalogue: Catalogue): Verdict {
  const denial = deniedIn(one, now, catalogue);
  return denial === 'denied'
    ? { change: 'gone' }
    : { change: 'not-comparable', reason: denial ?? 'this exam says nothing of it' };
}

function deniedIn(
  { statement, side }: Comparable,
  other: ComparedExam,
  catalogue: Catalogue,
): string | undefined {
  return comparisonOf(statement)?.denied?.(statement, side, other, catalogue);
}

function comparison(
  now: Comparable | undefined,
  before: Comparable | undefined,
  verdict: Verdict,
  days?: number,
): Comparison {
  // One of the two is always given; the prior statement tells what is no longer stated.
  const { identity, statement, code, side, modality, tracking } = (now ?? before) as Comparable;
  const region = 'region' in statement ? statement.region : undefined;
  return {
    identity,
    kind: statement.kind,
    code,
    // A region that is itself what is compared is told by the code.
    ...(region !== undefined && subjectOf(statement).table !== 'regions' && { region }),
    ...(side !== undefined && { side }),
    ...(modality !== undefined && { modality }),
    ...(tracking !== undefined && { tracking }),
    ...verdict,
    ...(now !== undefined && { now: now.statement.key }),
    ...(before !== undefined && { before: before.statement.key }),
    ...(days !== undefined && { days }),
  };
}

function withFeatures(exam: Indexed, catalogue: Catalogue): ComparedExam {
  const features = new Map<string, Finding[]>();
  for (const finding of exam.index.all('finding')) {
    const feature = catalogue.findings.get(finding.finding)?.feature;
    if (feature !== undefined && finding.presence === 'present') {
      listIn(features, feature).push(finding);
    }
  }
  return { ...exam, features };
}

function looseNames(all: ReadonlyMap<string, readonly Comparable[]>): ReadonlySet<string> {
  const names = new Set<string>();
  for (const list of all.values()) for (const one of list) names.add(one.loose);
  return names;
}

/** Carried values keep the time at which they were first stated. */
function daysApart(
  now: ComparedExam,
  a: Comparable,
  before: ComparedExam,
  b: Comparable,
): number | undefined {
  const days = daysBetween(timeOf(before.exam, b.statement), timeOf(now.exam, a.statement));
  return days !== undefined && days.least === days.most ? days.least : undefined;
}

function timeOf(exam: Exam, statement: Statement): string {
  return statement.carried?.at ?? statement.at ?? exam.performed.start;
}
