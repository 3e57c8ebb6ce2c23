import type { Symptom } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { compare, type Exact, exact } from '../figures/decimal.ts';
import { baseValue } from '../figures/units.ts';
import { isWithin } from '../places/regions.ts';
import { coversSide, type OneSide } from '../places/sides.ts';
import type { Condition, SignCondition, ToldCondition } from '../tables/condition.ts';
import { methodsFor } from '../tables/denying-methods.ts';
import { fill } from '../words/check-words.ts';
import { every, type Fact, known, knownBy, not, some, unknown } from './fact.ts';
import { figureOf, isMeasured, measureName } from './measured.ts';
import { weakerThan } from './movements.ts';
import { codedAttribute } from './signs.ts';
import { ageAtLeast, lastedDays, sign, symptom } from './stated.ts';

/** Whether a condition of a picture holds in an exam, of one side or of either. */
export function conditionHolds(
  context: CheckContext,
  condition: Condition,
  side: OneSide | undefined,
): Fact {
  const answer = (one: Condition): Fact => conditionHolds(context, one, side);
  if ('any' in condition) return some(condition.any.map(answer));
  if ('all' in condition) return every(condition.all.map(answer));
  if ('atLeast' in condition) return countOf(condition.of.map(answer), condition.atLeast);
  if ('ifFound' in condition) {
    const found = answer(condition.ifFound);
    return found.holds === true ? found : known(false);
  }
  if ('unlessFound' in condition) {
    const found = answer(condition.unlessFound);
    return found.holds === true ? knownBy(false, found.used) : known(true);
  }
  return statedHolds(context, condition, side);
}

type Stated = Exclude<
  Condition,
  | { readonly any: unknown }
  | { readonly all: unknown }
  | { readonly atLeast: unknown }
  | { readonly ifFound: unknown }
  | { readonly unlessFound: unknown }
>;

function statedHolds(context: CheckContext, condition: Stated, side: OneSide | undefined): Fact {
  if ('sign' in condition) return signHolds(context, condition, side);
  if ('told' in condition) return toldHolds(context, condition, side);
  if ('weak' in condition) {
    const sides: readonly OneSide[] = side === undefined ? ['right', 'left'] : [side];
    return some(
      condition.weak.flatMap((test) => sides.map((one) => weakerThan(context, test, one, 0))),
    );
  }
  if ('lost' in condition) return some(condition.lost.map((point) => lostAt(context, point, side)));
  if ('test' in condition) return resultIs(context, condition, side);
  if ('quality' in condition) return qualityIs(context, condition, side);
  if ('measure' in condition) return figureOver(context, condition.measure, condition.over, side);
  if ('history' in condition) return historyIs(context, condition.history, condition.values);
  const { age } = condition;
  return 'from' in age ? ageAtLeast(context, age.from) : not(ageAtLeast(context, age.below));
}

function countOf(facts: readonly Fact[], least: number): Fact {
  const holding = facts.filter((fact) => fact.holds === true);
  if (holding.length >= least) return every(holding);
  const open = facts.filter((fact) => fact.holds === undefined);
  if (holding.length + open.length < least) {
    return knownBy(
      false,
      facts.flatMap((fact) => (fact.holds === false ? fact.used : [])),
    );
  }
  return every([...holding, ...open]);
}

function signHolds(
  context: CheckContext,
  { sign: codes, at, anySide }: SignCondition,
  side: OneSide | undefined,
): Fact {
  const asked = anySide === true ? undefined : side;
  return some(codes.map((finding) => oneSign(context, finding, at, asked)));
}

/** A sign at any of its places, with one word for what is missing. */
function oneSign(
  context: CheckContext,
  finding: string,
  at: readonly string[] | undefined,
  side: OneSide | undefined,
): Fact {
  const { catalogue, words } = context;
  const row = catalogue.findings.get(finding);
  const regions = at ?? row?.regions ?? [];
  const by = methodsFor(finding);
  const fact = isSilentOn(context, finding)
    ? unknown()
    : some(
        regions.map((region) => {
          const midline = catalogue.regions.get(region)?.laterality === 'midline';
          return sign(context, {
            finding,
            regions: [region],
            ...(side !== undefined && !midline && { side }),
            by,
          });
        }),
      );
  if (fact.holds !== undefined) return fact;
  const name = words.within(row?.display ?? finding);
  const [only] = at ?? [];
  const place = catalogue.regions.get(only ?? '')?.display;
  const where = side === undefined ? '' : words.sides[side];
  const missing =
    place === undefined
      ? fill(words.phrases.named, { name, side: where })
      : fill(words.phrases.at, { name, place: words.within(place), side: where });
  return { ...unknown(missing), used: fact.used };
}

/** Nothing is said that could state or deny the sign: it need not be looked for region by region. */
function isSilentOn({ catalogue, features, index }: CheckContext, finding: string): boolean {
  if (index.all('region-state').length > 0) return false;
  const feature = catalogue.findings.get(finding)?.feature;
  const codes = feature === undefined ? [finding] : (features.get(feature) ?? [finding]);
  return codes.every((code) => index.about('finding', code).length === 0);
}

function toldHolds(
  context: CheckContext,
  condition: ToldCondition,
  side: OneSide | undefined,
): Fact {
  const asked = condition.anySide === true ? undefined : side;
  const timed = condition.fromDays !== undefined || condition.underDays !== undefined;
  const told = condition.told.filter((code) =>
    context.index.about('symptom', code).some((one) => one.answer === 'yes'),
  );
  const codes = timed && told.length > 0 ? told : condition.told;
  return some(codes.map((code) => oneTold(context, code, condition, asked)));
}

function oneTold(
  context: CheckContext,
  code: string,
  condition: ToldCondition,
  side: OneSide | undefined,
): Fact {
  const { at, course } = condition;
  const { catalogue, index, words } = context;
  const yes = index
    .about('symptom', code)
    .filter((one) => one.answer === 'yes')
    .filter((one) => side === undefined || coversSide(one.side, side));
  const placed = yes.filter(({ region }) => {
    if (at === undefined) return true;
    return region !== undefined && at.some((place) => isWithin(catalogue, region, place));
  });
  const name = words.within(catalogue.symptoms.get(code)?.display ?? code);
  if (placed.length > 0) {
    return some(
      placed.map((one) =>
        every([
          known(true, one.key),
          ...(course === undefined ? [] : [courseIs(context, one, name)]),
          ...timeHolds(context, one, condition),
        ]),
      ),
    );
  }
  if (yes.some(({ region }) => region === undefined)) {
    return unknown(fill(words.phrases['place-of'], { name }));
  }
  // A yes of the other side says nothing of this one; everything else is as for any complaint.
  const other = index.about('symptom', code).find((one) => one.answer === 'yes');
  return other === undefined ? symptom(context, code) : known(false, other.key);
}

function courseIs({ words }: CheckContext, one: Symptom, name: string): Fact {
  if (one.course === undefined) return unknown(fill(words.phrases.course, { name }));
  return known(one.course === 'worse', one.key);
}

function timeHolds(
  context: CheckContext,
  one: Symptom,
  { fromDays, underDays, orTimeUnknown }: ToldCondition,
): readonly Fact[] {
  const facts = [
    ...(fromDays === undefined ? [] : [lastedDays(context, one, fromDays)]),
    ...(underDays === undefined ? [] : [not(lastedDays(context, one, underDays))]),
  ];
  if (orTimeUnknown !== true) return facts;
  return facts.map((fact) => (fact.holds === undefined ? known(true, one.key) : fact));
}

function lostAt(context: CheckContext, point: string, side: OneSide | undefined): Fact {
  const { catalogue, index, words } = context;
  const tested = index
    .about('sensation', point)
    .filter((one) => side === undefined || one.side === undefined || coversSide(one.side, side))
    .flatMap(({ key, results }) =>
      results.map(({ result }) => ({ key, row: catalogue.sensationResults.get(result) })),
    )
    .filter(({ row }) => row !== undefined && row.untested !== true);
  const altered = tested.filter(({ row }) => row?.usual !== true);
  if (altered.length > 0)
    return knownBy(
      true,
      altered.map(({ key }) => key),
    );
  if (tested.length > 0)
    return knownBy(
      false,
      tested.map(({ key }) => key),
    );
  return unknown(
    fill(words.phrases.named, {
      name: words.within(catalogue.testPoints.get(point)?.display ?? point),
      side: side === undefined ? '' : words.sides[side],
    }),
  );
}

function resultIs(
  context: CheckContext,
  { test, results }: { readonly test: string; readonly results: readonly string[] },
  side: OneSide | undefined,
): Fact {
  const { catalogue, index, words } = context;
  const done = [
    ...index.about('function-test', test),
    ...index.about('movement', test).map((one) => ({ ...one, result: one.grade })),
  ]
    .filter((one) => side === undefined || coversSide(one.side, side))
    .filter(({ result }) => catalogue.testResults.get(result)?.untested !== true);
  if (done.length === 0) {
    const name = words.within(catalogue.testPoints.get(test)?.display ?? test);
    const where = side === undefined ? '' : words.sides[side];
    return unknown(fill(words.phrases.named, { name, side: where }));
  }
  const meeting = done.filter(({ result }) => results.includes(result));
  return knownBy(
    meeting.length > 0,
    (meeting.length > 0 ? meeting : done).map(({ key }) => key),
  );
}

function qualityIs(
  context: CheckContext,
  { quality, values, of, at }: Extract<Condition, { quality: string }>,
  side: OneSide | undefined,
): Fact {
  const { catalogue, index, words } = context;
  const there = of
    .flatMap((finding) => index.about('finding', finding))
    .filter((one) => one.presence === 'present')
    .filter((one) => side === undefined || coversSide(one.side, side))
    .filter(
      (one) => at === undefined || at.some((region) => isWithin(catalogue, one.region, region)),
    );
  if (there.length === 0) return known(false);
  const name = words.within(catalogue.attributes.get(quality)?.display ?? quality);
  return some(
    there.map((one) => {
      const value = codedAttribute(one, quality);
      return value === undefined ? unknown(name) : known(values.includes(value), one.key);
    }),
  );
}

function figureOver(
  context: CheckContext,
  measure: string,
  limit: string,
  side: OneSide | undefined,
): Fact {
  const unit = context.catalogue.measures.get(measure)?.unit ?? '';
  const at: Exact | undefined = baseValue(limit, unit)?.value ?? exact(limit);
  const figures = context.index
    .about('measurement', measure)
    .filter((one) => side === undefined || coversSide(one.side, side))
    .map((one) => figureOf(context, one))
    .filter(isMeasured);
  if (figures.length === 0 || at === undefined) return unknown(measureName(context, measure));
  const over = figures.filter((figure) => compare(figure.value, at) > 0);
  const keys = (over.length > 0 ? over : figures).map(({ statement }) => statement.key);
  return knownBy(over.length > 0, keys);
}

function historyIs(
  { catalogue, exam, words }: CheckContext,
  code: string,
  values: readonly string[],
): Fact {
  const stated = (exam.conditions ?? []).filter((one) => one.condition === code);
  if (stated.some((one) => values.includes(String(one.value)))) {
    return known(true, `condition.${code}`);
  }
  if (stated.some((one) => one.value !== 'not-asked')) return known(false, `condition.${code}`);
  return unknown(words.within(catalogue.conditions.get(code)?.display ?? code));
}
