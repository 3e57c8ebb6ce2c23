import { isSymptom } from '../../kinds/symptom/check.ts';
import type { Key } from '../../model/primitive.ts';
import type { Finding, RegionState, Symptom } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { compare, type Exact, whole } from '../figures/decimal.ts';
import { ageAt, daysBetween } from '../figures/time.ts';
import { baseValue } from '../figures/units.ts';
import { leavesOpen } from '../places/exceptions.ts';
import { isWithin, membersOf, regionName } from '../places/regions.ts';
import { coversSide, type OneSide, oneSides } from '../places/sides.ts';
import type { Judgement } from '../settings/check-settings.ts';
import { fill } from '../words/check-words.ts';
import { every, type Fact, known, knownBy, some, unknown } from './fact.ts';

const SECONDS_A_DAY = 86_400n;

/** Age in completed years at the exam is at least this. */
export function ageAtLeast(context: CheckContext, years: number): Fact {
  const { birthDate } = context.exam.subject;
  const { phrases } = context.words;
  if (birthDate === undefined) return unknown(phrases.age);
  const age = ageAt(birthDate, context.exam.performed.start);
  if (age === undefined) return unknown(phrases['age-impossible']);
  if (age.least >= years) return known(true, 'subject.birthDate');
  if (age.most < years) return known(false, 'subject.birthDate');
  return unknown(fill(phrases['age-inexact'], { years }));
}

/** A complaint: yes, no, or not known where it was not asked or the answer was not clear. */
export function symptom(context: CheckContext, code: string, side?: OneSide): Fact {
  const { phrases, within } = context.words;
  const name = within(context.catalogue.symptoms.get(code)?.display ?? code);
  const statements = context.index.about('symptom', code);
  const here = statements.filter((one) => side === undefined || coversSide(one.side, side));
  const yes = here.filter((one) => one.answer === 'yes');
  const placed = yes.filter((one) => side === undefined || one.side !== undefined);
  if (placed.length > 0)
    return knownBy(
      true,
      placed.map((one) => one.key),
    );
  if (yes.length > 0) return unknown(fill(phrases['side-of'], { name }));
  const open = here.find((one) => one.answer !== 'no');
  if (open !== undefined) return unknown(fill(phrases[answerPhrase(open)], { name }));
  const no = here.map((one) => one.key);
  return no.length > 0 ? knownBy(false, no) : unknown(name);
}

export interface SignQuery {
  readonly finding: string;
  /** Any of these places; a place counts with everything below it. */
  readonly regions: readonly string[];
  readonly side?: OneSide;
  /** Methods by which the sign would have been seen or felt: a region normal by one of them denies it. */
  readonly by: readonly string[];
}

/** A sign: found, looked for and not found, or not known. */
export function sign(context: CheckContext, query: SignQuery): Fact {
  return some(
    query.regions.flatMap((region) => {
      const paired = context.catalogue.regions.get(region)?.laterality === 'paired';
      const sides = query.side === undefined && paired ? oneSides : [query.side];
      return sides.map((side) => signAt(context, query, region, side));
    }),
  );
}

function signAt(
  context: CheckContext,
  query: SignQuery,
  region: string,
  side: OneSide | undefined,
): Fact {
  const { finding, by } = query;
  const { catalogue, index } = context;
  const onSide = (one: Finding | RegionState): boolean =>
    side === undefined || coversSide(one.side, side);
  const stated = index.about('finding', finding).filter(onSide);
  const present = stated.filter(
    (one) => one.presence === 'present' && isWithin(catalogue, one.region, region),
  );
  if (present.length > 0)
    return knownBy(
      true,
      present.map((one) => one.key),
    );
  const absent = stated.filter(
    (one) =>
      one.presence === 'absent' &&
      isWithin(catalogue, region, one.region) &&
      !leavesOpen(context, one, { region, ...(side !== undefined && { side }) }),
  );
  const otherValue = otherValues(context, finding).filter(
    (one) => one.presence === 'present' && one.region === region && onSide(one),
  );
  const denying = [...absent, ...otherValue];
  if (denying.length > 0)
    return knownBy(
      false,
      denying.map((one) => one.key),
    );
  const normal = index
    .about('region-state', region)
    .filter((one) => one.state === 'normal' && onSide(one))
    .filter((one) => (one.methods ?? []).some((method) => by.includes(method)))
    .filter((one) => !leavesOpen(context, one, { region, ...(side !== undefined && { side }) }));
  if (normal.length > 0)
    return knownBy(
      false,
      normal.map((one) => one.key),
    );
  const inMembers = deniedInMembers(context, query, region, side);
  if (inMembers !== undefined) return inMembers;
  const { phrases, sides, within } = context.words;
  return unknown(
    fill(phrases.at, {
      name: within(catalogue.findings.get(finding)?.display ?? finding),
      place: within(regionName(catalogue, region)),
      side: side === undefined ? '' : sides[side],
    }),
  );
}

/** A sign that each member of a group denies is denied of the group, on each side that a member has. */
function deniedInMembers(
  context: CheckContext,
  query: SignQuery,
  region: string,
  side: OneSide | undefined,
): Fact | undefined {
  const { regions } = context.catalogue;
  if (regions.get(region)?.group !== true) return undefined;
  const facts = membersOf(context.catalogue, region).flatMap((member) => {
    const paired = side === undefined && regions.get(member)?.laterality === 'paired';
    const sides: readonly (OneSide | undefined)[] = paired ? oneSides : [side];
    return sides.map((one) => signAt(context, query, member, one));
  });
  const denied = facts.length > 0 && facts.every((fact) => fact.holds === false);
  return denied ? some(facts) : undefined;
}

/** Statements of the other values of the feature that a sign is a value of: a clear voice is not hoarse. */
function otherValues({ catalogue, features, index }: CheckContext, finding: string): Finding[] {
  const feature = catalogue.findings.get(finding)?.feature;
  if (feature === undefined) return [];
  return (features.get(feature) ?? [])
    .filter((code) => code !== finding)
    .flatMap((code) => index.about('finding', code));
}

/** What the exam's conditions say: earlier injury, radiotherapy and the like, answered yes or no. */
export function background(context: CheckContext, condition: string): Fact {
  const name = context.words.within(
    context.catalogue.conditions.get(condition)?.display ?? condition,
  );
  const stated = (context.exam.conditions ?? []).filter((one) => one.condition === condition);
  if (stated.some((one) => one.value === 'yes')) return known(true, `condition.${condition}`);
  if (stated.some((one) => one.value === 'no')) return known(false, `condition.${condition}`);
  return unknown(name);
}

/** A complaint has lasted at least so many days at the exam. */
export function lastedDays(context: CheckContext, statement: Symptom, days: number): Fact {
  const span = durationSeconds(context, statement);
  const { phrases, within } = context.words;
  const display = context.catalogue.symptoms.get(statement.symptom)?.display;
  const name = display === undefined ? phrases.complaint : within(display);
  const limit = whole(BigInt(days) * SECONDS_A_DAY);
  if (span.least !== undefined && compare(span.least, limit) >= 0)
    return known(true, statement.key);
  if (span.below !== undefined && compare(span.below, limit) <= 0)
    return known(false, statement.key);
  if (span.most !== undefined && compare(span.most, limit) < 0) return known(false, statement.key);
  const inWords = statement.durationText !== undefined;
  return unknown(fill(phrases[inWords ? 'how-long-words' : 'how-long'], { name }));
}

interface DurationSpan {
  readonly least?: Exact;
  readonly most?: Exact;
  /** The duration is less than this, and not equal to it. */
  readonly below?: Exact;
}

/** Bounds of a duration in seconds, from the quantity or else from the onset. */
function durationSeconds(context: CheckContext, statement: Symptom): DurationSpan {
  const { duration, onset } = statement;
  if (duration !== undefined) {
    const seconds = baseValue(duration.value, duration.unit);
    if (seconds === undefined || seconds.unit.kind !== 'time') return {};
    switch (duration.comparator) {
      case undefined:
        return { least: seconds.value, most: seconds.value };
      case '<=':
        return { most: seconds.value };
      case '<':
        return { below: seconds.value };
      default:
        return { least: seconds.value };
    }
  }
  const days = onset === undefined ? undefined : daysBetween(onset, context.exam.performed.start);
  if (days === undefined) return {};
  return {
    least: whole(BigInt(days.least) * SECONDS_A_DAY),
    most: whole(BigInt(days.most) * SECONDS_A_DAY),
  };
}

/** A complaint said to be there, told of in the exam, that has lasted so long. */
export function symptomLasting(
  context: CheckContext,
  code: string,
  days: number,
  side?: OneSide,
): Fact {
  const told = symptom(context, code, side);
  if (told.holds !== true) return told;
  return some(
    symptomsNamed(context, told.used).map((one) =>
      every([known(true, one.key), lastedDays(context, one, days)]),
    ),
  );
}

/** The symptom statements among these keys. */
export function symptomsNamed(context: CheckContext, keys: readonly Key[]): readonly Symptom[] {
  return keys.flatMap((key) => {
    const statement = context.index.byKey.get(key);
    return isSymptom(statement) ? [statement] : [];
  });
}

/** What the clinician judged of the statements a fact rests on; open where nothing was judged. */
export function judged(
  context: CheckContext,
  keys: readonly Key[],
  question: Exclude<keyof Judgement, 'statement'>,
  inWords: string,
): Fact {
  const answers = keys.flatMap((key) => {
    const answer = context.judgements.get(key)?.[question];
    return answer === undefined ? [] : [known(answer, key)];
  });
  return answers.length > 0 ? some(answers) : unknown(inWords);
}

function answerPhrase(statement: Symptom): 'unsure' | 'declined' | 'not-asked' {
  return statement.answer === 'unsure' || statement.answer === 'declined'
    ? statement.answer
    : 'not-asked';
}
