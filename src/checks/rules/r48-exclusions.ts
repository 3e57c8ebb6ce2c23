import { ruleTitles } from '../../issues/english/rules.ts';
import type { ExceptedPlace } from '../../kinds/facets/base.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { CheckContext } from '../context.ts';
import { figureOf, isMeasured } from '../facts/measured.ts';
import { methodsMeet } from '../facts/signs.ts';
import { compare, exact } from '../figures/decimal.ts';
import { isWithin } from '../places/regions.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';
import { type Exclusion, exclusions, type Thing } from '../tables/exclusions.ts';

/** Fires where an exam states two things of one place that the table of exclusions holds apart. */
export const r48Exclusions: ConsistencyRule = {
  id: 'R48',
  title: ruleTitles.R48,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'contradiction',
  source: 'table of exclusions, each with its reason; common practice, no source',
  evidence: 'common-practice',
  run: (context) => {
    if (context.index.known.length === 0) return [];
    const found = exclusions.flatMap((row) => clashes(context, row));
    const fires = found.filter((one) => one.outcome === 'fires');
    if (fires.length > 0) return found;
    const text = 'Nothing in the exam is held apart by the table of exclusions.';
    return [...found, { outcome: 'does-not-fire', inputsUsed: [], inputsMissing: [], text }];
  },
};

/** Something that the exam states, and where. */
interface Stated {
  readonly key: Key;
  readonly region?: string | undefined;
  readonly side?: Side | undefined;
  readonly place?: string | undefined;
  readonly methods?: readonly string[] | undefined;
  readonly tracking?: string | undefined;
  readonly except?: readonly ExceptedPlace[] | undefined;
}

function clashes(context: CheckContext, row: Exclusion): readonly RuleFinding[] {
  const ones = statedOf(context, row.one);
  if (ones.length === 0) return [];
  const others = row.other.flatMap((thing) => statedOf(context, thing));
  return others.flatMap((other) => {
    const one = ones.find((each) => each.key !== other.key && near(context, row, each, other));
    if (one === undefined) return [];
    // With a place in words on one of them alone the two may be about different spots.
    const certain = one.place === other.place || row.within !== 'place';
    return [
      {
        outcome: certain ? 'fires' : 'not-evaluable',
        on: other.key,
        ...(other.side !== undefined && { side: other.side }),
        severity: row.severity,
        // A consent or a level of concern is not a statement and has no key.
        inputsUsed: [one.key, other.key].filter((key) => context.index.byKey.has(key)),
        inputsMissing: certain ? [] : ['whether both are about the same spot'],
        text: `Held apart: ${row.why}.`,
      },
    ];
  });
}

function near(
  { catalogue }: CheckContext,
  { within }: Exclusion,
  one: Stated,
  other: Stated,
): boolean {
  if (within === 'exam') return true;
  if (!sidesOverlap(one.side, other.side) || !methodsMeet(one.methods, other.methods)) return false;
  if (leavesOut(catalogue, one, other) || leavesOut(catalogue, other, one)) return false;
  if (within === 'side') return true;
  if (one.place !== undefined && other.place !== undefined && one.place !== other.place)
    return false;
  if (one.tracking !== undefined && other.tracking !== undefined && one.tracking !== other.tracking)
    return false;
  if (one.region === undefined || other.region === undefined) return false;
  return isWithin(catalogue, other.region, one.region);
}

/** What is said of a group does not hold of the members that it names as exceptions. */
function leavesOut(
  catalogue: Catalogue,
  { except = [] }: Stated,
  { region, side }: Stated,
): boolean {
  return except.some(
    (one) =>
      region !== undefined &&
      isWithin(catalogue, region, one.region) &&
      sidesOverlap(one.side, side),
  );
}

function statedOf(context: CheckContext, thing: Thing): readonly Stated[] {
  const { index, exam, catalogue } = context;
  if ('sign' in thing) {
    // What is only suspected is not a state of the place.
    return index.about('finding', thing.sign).filter(({ presence }) => presence === thing.is);
  }
  if ('state' in thing) {
    const state = thing.state === 'normal' ? 'normal' : 'not-applicable';
    return index
      .all('region-state')
      .filter((one) => one.state === state && isWithin(catalogue, one.region, thing.region));
  }
  if ('measure' in thing) {
    return index
      .about('measurement', thing.measure)
      .filter((one) => reaches(context, one, thing))
      .map(({ key, region, side }) => ({ key, region, side }));
  }
  if ('test' in thing) {
    return [
      ...index.about('movement', thing.test).filter(({ grade }) => thing.results.includes(grade)),
      ...index
        .about('function-test', thing.test)
        .filter(({ result }) => thing.results.includes(result)),
    ].map(({ key, side }) => ({ key, side, region: catalogue.testPoints.get(thing.test)?.region }));
  }
  if ('scale' in thing) {
    return index
      .about('scale-score', thing.scale)
      .filter(({ score }) => typeof score === 'string' && thing.grades.includes(score))
      .map(({ key, side, region }) => ({
        key,
        side,
        region: region ?? catalogue.scales.get(thing.scale)?.region,
      }));
  }
  if ('concern' in thing) {
    return exam.conclusion?.concern === thing.concern ? [{ key: 'conclusion' }] : [];
  }
  if ('refused' in thing) {
    const refused = exam.consents?.some(
      ({ to, answer }) => to === thing.refused && answer === 'refused',
    );
    return refused ? [{ key: 'consents' }] : [];
  }
  return doneBy(context, thing.doneBy);
}

function reaches(
  context: CheckContext,
  statement: Parameters<typeof figureOf>[1],
  { figure, than }: Extract<Thing, { measure: string }>,
): boolean {
  const found = figureOf(context, statement);
  const limit = exact(figure);
  if (!isMeasured(found) || limit === undefined) return false;
  const order = compare(found.value, limit);
  // A bound counts only where it lies on the same side.
  if (found.bound?.startsWith(than === 'over' ? '<' : '>')) return false;
  return than === 'over' ? order > 0 : order <= 0;
}

function doneBy(
  { index }: CheckContext,
  how: Extract<Thing, { doneBy: string }>['doneBy'],
): readonly Stated[] {
  if (how === 'picture') {
    return index
      .all('image')
      .filter(({ consent }) => consent === 'given')
      .map(({ key }) => ({ key }));
  }
  const examined = [...index.all('finding'), ...index.all('region-state')].filter(
    (one) => !('state' in one) || one.state !== 'not-examined',
  );
  const felt = examined.filter(({ methods = [] }) => methods.includes('palpation'));
  // One line is enough to say so.
  const [first] = how === 'palpation' ? felt : [...examined, ...index.known.filter(isTested)];
  return first === undefined ? [] : [{ key: first.key }];
}

function isTested(statement: { readonly kind: string }): boolean {
  return ['movement', 'function-test', 'measurement', 'sensation'].includes(statement.kind);
}
