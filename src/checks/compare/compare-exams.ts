import type { Exam } from '../../model/exam.ts';
import type { Finding, RegionState, Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExamIndex } from '../exam-index.ts';
import { listIn } from '../exam-index.ts';
import { isWithin } from '../regions.ts';
import { sidesOverlap } from '../sides.ts';
import type { Limit } from '../thresholds.ts';
import { daysBetween } from '../time.ts';
import { codedChange } from './coded.ts';
import { type Comparable, comparablesOf } from './comparable.ts';
import { compareFigures } from './compare-figures.ts';
import type { Comparison } from './comparison.ts';

/** An exam with its statements in order. */
export interface Indexed {
  readonly exam: Exam;
  readonly index: ExamIndex;
}

interface Side extends Indexed {
  /** Signs that are present, by the feature of which they are a value. */
  readonly features: ReadonlyMap<string, readonly Finding[]>;
}

type Verdict = Pick<Comparison, 'change' | 'reason' | 'figures' | 'values'>;

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
      comparisons.push(...here.map((one) => comparison(one, undefined, severalOf)));
    } else if (b === undefined) {
      comparisons.push(comparison(a, undefined, onlyNow(a, before, catalogue, loosely)));
    } else {
      const verdict = both(a, b, now, before, catalogue, skinChange);
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
  reason: 'several of the kind at one place; without a tracking key they can not be told apart',
};

function both(
  a: Comparable,
  b: Comparable,
  now: Side,
  before: Side,
  catalogue: Catalogue,
  skinChange: Limit | undefined,
): Verdict {
  if (a.statement.kind === 'measurement' && b.statement.kind === 'measurement') {
    return compareFigures(
      { exam: now.exam, statement: a.statement },
      { exam: before.exam, statement: b.statement },
      catalogue,
      skinChange,
    );
  }
  if (a.statement.carried !== undefined && !a.statement.carried.confirmed) {
    return { change: 'not-comparable', reason: 'carried over and not confirmed' };
  }
  return codedChange(a, b, catalogue);
}

/** Stated in this exam alone: new only where the prior exam denied it. */
function onlyNow(
  one: Comparable,
  before: Side,
  catalogue: Catalogue,
  loosely: ReadonlySet<string>,
): Verdict {
  const { statement } = one;
  if (statement.kind === 'finding' && statement.presence === 'present') {
    const denial = deniedIn(before, statement, one, catalogue);
    return denial === 'denied'
      ? { change: 'new' }
      : { change: 'not-comparable', reason: denial ?? silentBefore };
  }
  if (statement.kind === 'measurement' && loosely.has(one.loose)) {
    return { change: 'not-comparable', reason: 'conditions differ' };
  }
  return { change: 'not-comparable', reason: silentBefore };
}

const silentBefore = 'the prior exam says nothing of it';
const silentNow = 'this exam says nothing of it';

/** Stated in the prior exam alone: gone only where this exam denies it. */
function onlyBefore(one: Comparable, now: Side, catalogue: Catalogue): Verdict {
  const { statement } = one;
  if (statement.kind === 'finding' && statement.presence === 'present') {
    const denial = deniedIn(now, statement, one, catalogue);
    return denial === 'denied'
      ? { change: 'gone' }
      : { change: 'not-comparable', reason: denial ?? silentNow };
  }
  return { change: 'not-comparable', reason: silentNow };
}

/**
 * Whether an exam denies a sign at its place: another value of the same feature there, or the place
 * normal by a method that finds the sign. Otherwise why not, where the exam says why.
 */
function deniedIn(
  side: Side,
  finding: Finding,
  one: Comparable,
  catalogue: Catalogue,
): 'denied' | string | undefined {
  const feature = catalogue.findings.get(finding.finding)?.feature;
  const here = (other: Finding | RegionState): boolean =>
    isWithin(catalogue, finding.region, other.region) && sidesOverlap(other.side, one.side);
  const others = feature === undefined ? [] : (side.features.get(feature) ?? []);
  if (others.some((other) => other.finding !== finding.finding && here(other))) return 'denied';
  const stated = side.index.about('finding', finding.finding);
  if (stated.some((other) => other.presence === 'absent' && here(other))) return 'denied';
  const state = side.index.about('region-state', finding.region).find(here);
  return state === undefined ? undefined : deniedByState(state, finding);
}

function deniedByState(state: RegionState, finding: Finding): 'denied' | string | undefined {
  if (state.state === 'not-examined') return 'the region was not examined in one of the exams';
  if (state.state === 'not-applicable') return 'the structure is not there in one of the exams';
  if (state.state !== 'normal') return undefined;
  const { methods } = finding;
  if (methods === undefined || methods.some((method) => state.methods.includes(method))) {
    return 'denied';
  }
  return 'methods differ: the region was called normal by another method';
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
    ...(region !== undefined && statement.kind !== 'region-state' && { region }),
    ...(side !== undefined && { side }),
    ...(modality !== undefined && { modality }),
    ...(tracking !== undefined && { tracking }),
    ...verdict,
    ...(now !== undefined && { now: now.statement.key }),
    ...(before !== undefined && { before: before.statement.key }),
    ...(days !== undefined && { days }),
  };
}

function withFeatures(exam: Indexed, catalogue: Catalogue): Side {
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
function daysApart(now: Side, a: Comparable, before: Side, b: Comparable): number | undefined {
  const days = daysBetween(timeOf(before.exam, b.statement), timeOf(now.exam, a.statement));
  return days !== undefined && days.least === days.most ? days.least : undefined;
}

function timeOf(exam: Exam, statement: Statement): string {
  return statement.carried?.at ?? statement.at ?? exam.performed.start;
}
