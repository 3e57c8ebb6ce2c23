import type { Saying } from '../../kinds/facets/meaning.ts';
import { sayingsOf } from '../../kinds/registries/meanings.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Key } from '../primitive.ts';
import { sidesOverlap } from '../sides.ts';
import type { Statement } from '../statement.ts';
import { isWithin, lineageOf } from './places.ts';
import type { ExamRule, RuleContext } from './rule.ts';

/**
 * Two statements that say opposite things of one place: a sign is there and is not, a region is normal
 * and abnormal, something is examined and was not. Neither can be told from the other, so both are
 * refused. Only what leaves no other reading counts: the same examiner or teller, the same time, a
 * method in common. Signs that exclude each other by what they mean are for the checks (R35, R48).
 */
export const noOpposites: ExamRule = ({ exam, catalogue, said, report }) => {
  const positions = new Map<Key, number>();
  exam.statements.forEach(({ key }, at) => {
    if (!positions.has(key)) positions.set(key, at);
  });
  const against = new Map<Key, Set<Key>>();
  for (const [one, other] of oppositesIn(exam.statements, catalogue, said)) {
    for (const [key, with_] of [
      [one, other],
      [other, one],
    ] as const) {
      against.set(key, (against.get(key) ?? new Set()).add(with_));
    }
  }
  exam.statements.forEach(({ key }, at) => {
    const keys = against.get(key);
    // Of two statements with one key the first stands for both; the key itself is reported elsewhere.
    if (keys === undefined || positions.get(key) !== at) return;
    report('contradiction', ['statements', at], { reason: 'opposites', keys: [...keys] });
  });
};

/** What a statement says of one thing at one place, and all that must agree for two to meet. */
interface Told {
  readonly key: Key;
  readonly saying: Saying;
  readonly region: string | undefined;
  readonly side: Saying['at'][number]['side'];
  /** In the examiner's words, within the region. */
  readonly spot: string;
  /** Number of the lesion that is followed. */
  readonly tracking: number | undefined;
  /** Kind, thing, teller and time. Region states are all of one thing, so that a place meets those within it. */
  readonly about: string;
  /** The same for the state of the region as a whole. */
  readonly place: string;
}

/** Numbers for texts, the same for the same text: what is put together of them can be read in one way only. */
class Numbers {
  private readonly known = new Map<string | undefined, number>();

  of(text: string | undefined): number {
    let number = this.known.get(text);
    if (number === undefined) {
      number = this.known.size;
      this.known.set(text, number);
    }
    return number;
  }
}

/** An empty one follows nothing. */
function trackingOf(statement: Statement): string | undefined {
  const tracking = 'tracking' in statement ? statement.tracking : undefined;
  return tracking === '' ? undefined : tracking;
}

type Answer = 'there' | 'not-there' | 'not-examined';

/** Figures and scores are compared by what they measure; what is not known today opposes nothing. */
function isCompared({ of, unconfirmed }: Saying): boolean {
  return !unconfirmed && of.table !== 'measures' && of.table !== 'scales';
}

/** The sign, point, test or item; region states are all of one thing. */
function thingOf({ of }: Saying): string | undefined {
  return of.table === 'regions' ? undefined : of.code;
}

/** Whether any thing has two answers: a quick look, after which most exams need no closer one. */
function canOppose(sayings: readonly Saying[]): boolean {
  const answers = new Map<string | undefined, Answer>();
  for (const saying of sayings) {
    const answer = answerOf(saying);
    if (answer === undefined) continue;
    const thing = thingOf(saying);
    if ((answers.get(thing) ?? answer) !== answer) return true;
    answers.set(thing, answer);
  }
  // A region that was not examined stands against every sign said to have been looked for there.
  return answers.get(undefined) === 'not-examined' && sayings.some(saysUsual);
}

function addTold(
  told: Told[],
  statement: Statement,
  said: readonly Saying[],
  numbers: Numbers,
): void {
  const tracking = trackingOf(statement);
  for (const saying of said) {
    if (!isCompared(saying)) continue;
    const { aspect, at, seen } = saying;
    const teller = 'toldBy' in statement ? statement.toldBy : undefined;
    const who = `${numbers.of(statement.examiner)},${numbers.of(teller)},${numbers.of(seen ?? undefined)}`;
    const thing = thingOf(saying);
    told.push({
      key: statement.key,
      saying,
      region: at[0]?.region,
      side: at[0]?.side,
      spot: ('place' in statement ? statement.place : undefined) ?? '',
      tracking: tracking === undefined ? undefined : numbers.of(tracking),
      about: `${numbers.of(statement.kind)},${numbers.of(thing)},${numbers.of(aspect?.code)},${who}`,
      place: `${numbers.of('region-state')},${numbers.of(undefined)},${numbers.of(undefined)},${who}`,
    });
  }
}

function answerOf({ polarity }: Saying): Answer | undefined {
  if (polarity === 'states') return 'there';
  if (polarity === 'denies') return 'not-there';
  return polarity === 'none' ? 'not-examined' : undefined;
}

/** Pairs of keys; of several that oppose one in the same way the first is enough. */
export function oppositesIn(
  statements: readonly Statement[],
  catalogue: Catalogue,
  said: RuleContext['said'] = (statement) => sayingsOf(statement, catalogue),
): readonly (readonly [Key, Key])[] {
  if (!canOppose(statements.flatMap(said).filter(isCompared))) return [];
  const told: Told[] = [];
  const numbers = new Numbers();
  for (const statement of statements) addTold(told, statement, said(statement), numbers);
  const index = new Index(numbers);
  for (const one of told) index.add(one);
  return told.flatMap((one) =>
    opposing(one, index, catalogue).flatMap((other) =>
      other === undefined || other.key === one.key ? [] : [[other.key, one.key] as const],
    ),
  );
}

function opposing(one: Told, index: Index, catalogue: Catalogue): (Told | undefined)[] {
  const answer = answerOf(one.saying);
  const spots = one.spot === '' ? anywhere : [one.spot, ''];
  const found: (Told | undefined)[] = [];
  if (answer === 'there') {
    const isMeant = (other: Told): boolean =>
      other.saying.except.every((place) => !excepted(one, place, catalogue));
    for (const region of lineageOf(one.region, catalogue)) {
      for (const spot of spots) {
        found.push(index.find('not-there', one, { about: one.about, region, spot }, isMeant));
      }
    }
  }
  if (answer !== 'not-examined') found.push(index.find('not-examined', one, one));
  if (saysUsual(one.saying)) {
    const { place, region } = one;
    for (const spot of spots) {
      found.push(index.find('not-examined', one, { about: place, region, spot }));
    }
  }
  return found;
}

const anywhere: readonly string[] = [''];

/** A sign looked for in vain, or a usual one found: said of a place that was looked at. */
function saysUsual({ of, polarity, usual = false }: Saying): boolean {
  return of.table === 'findings' && polarity === (usual ? 'states' : 'denies');
}

function excepted(one: Told, except: Saying['except'][number], catalogue: Catalogue): boolean {
  return (
    one.region !== undefined &&
    isWithin(one.region, except.region, catalogue) &&
    sidesOverlap(one.side, except.side)
  );
}

/** What was told, filed by all that must be equal; few are left in each list, whatever the exam. */
class Index {
  private readonly lists = new Map<string, Map<string, Told>>();
  private readonly numbers: Numbers;

  constructor(numbers: Numbers) {
    this.numbers = numbers;
  }

  add(one: Told): void {
    const answer = answerOf(one.saying);
    // What is there is what looks for others; nothing looks for it.
    if (answer === undefined || answer === 'there') return;
    // Alike ones oppose the same, and leaving them out keeps long lists quick.
    const { methods, except } = one.saying;
    const places = except.length === 0 ? '' : JSON.stringify(except);
    const alike = `${one.side} ${methods.map((method) => this.numbers.of(method)).join()} ${places}`;
    for (const tracking of one.tracking === undefined
      ? noTracking
      : ([one.tracking, '*'] as const)) {
      const name = this.nameOf(answer, one, tracking);
      let list = this.lists.get(name);
      if (list === undefined) {
        list = new Map();
        this.lists.set(name, list);
      }
      if (!list.has(alike)) list.set(alike, one);
    }
  }

  /**
   * The first of a name that meets it. Followed lesions are themselves: one can be gone while another
   * is there.
   */
  find(
    answer: Answer,
    one: Told,
    name: Named,
    also: (other: Told) => boolean = () => true,
  ): Told | undefined {
    for (const tracking of one.tracking === undefined ? whichever : [one.tracking, undefined]) {
      const list = this.lists.get(this.nameOf(answer, name, tracking));
      if (list === undefined) continue;
      for (const other of list.values()) {
        if (meet(one, other) && also(other)) return other;
      }
    }
    return undefined;
  }

  private nameOf(answer: Answer, { about, region, spot }: Named, tracking: Tracking): string {
    return `${answer} ${about} ${this.numbers.of(region)} ${tracking} ${this.numbers.of(spot)}`;
  }
}

/** Number of a lesion that is followed, none, or whichever. */
type Tracking = number | undefined | '*';
const noTracking: readonly Tracking[] = [undefined, '*'];
const whichever: readonly Tracking[] = ['*'];

/** What, besides the answer and the lesion, two must have in common. */
type Named = Pick<Told, 'about' | 'region' | 'spot'>;

/** One side, and a method in common; one that names none may have used any. */
function meet(a: Told, b: Told): boolean {
  const [mine, yours] = [a.saying.methods, b.saying.methods];
  return (
    sidesOverlap(a.side, b.side) &&
    (mine.length === 0 || yours.length === 0 || mine.some((method) => yours.includes(method)))
  );
}
