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
  readonly tracking: string;
  /** Thing, teller and time. Region states are all of one thing, so that a place meets those within it. */
  readonly about: string;
  /** The same for the state of the region as a whole. */
  readonly place: string;
}

type Answer = 'there' | 'not-there' | 'not-examined';

function toldBy(statement: Statement, said: readonly Saying[]): Told[] {
  return said.flatMap((saying): Told[] => {
    const { of, aspect, at, seen, unconfirmed } = saying;
    // Figures and scores are compared by what they measure; what is not known today opposes nothing.
    if (unconfirmed || of.table === 'measures' || of.table === 'scales') return [];
    const teller = 'toldBy' in statement ? statement.toldBy : undefined;
    const who = [statement.examiner, teller, seen];
    const thing = of.table === 'regions' ? undefined : of.code;
    return [
      {
        key: statement.key,
        saying,
        region: at[0]?.region,
        side: at[0]?.side,
        spot: ('place' in statement ? statement.place : undefined) ?? '',
        tracking: ('tracking' in statement ? statement.tracking : undefined) ?? '',
        about: JSON.stringify([statement.kind, thing, aspect?.code, who]),
        place: JSON.stringify(['region-state', undefined, undefined, who]),
      },
    ];
  });
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
  const told = statements.flatMap((statement) => toldBy(statement, said(statement)));
  const index = new Index();
  for (const one of told) index.add(one);
  return told.flatMap((one) => {
    const answer = answerOf(one.saying);
    const found: (Told | undefined)[] = [];
    if (answer === 'there') {
      for (const region of lineageOf(one.region, catalogue)) {
        for (const spot of new Set([one.spot, ''])) {
          found.push(
            index.find('not-there', { ...one, region, spot }, (other) =>
              other.saying.except.every((place) => !excepted(one, place, catalogue)),
            ),
          );
        }
      }
    }
    if (answer !== 'not-examined') found.push(index.find('not-examined', one));
    if (saysUsual(one.saying)) {
      for (const spot of new Set([one.spot, ''])) {
        found.push(index.find('not-examined', { ...one, about: one.place, spot }));
      }
    }
    return found.flatMap((other) =>
      other === undefined || other.key === one.key ? [] : [[other.key, one.key] as const],
    );
  });
}

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

  add(one: Told): void {
    const answer = answerOf(one.saying);
    if (answer === undefined) return;
    // Alike ones oppose the same, and leaving them out keeps long lists quick.
    const alike = JSON.stringify([one.side, one.saying.methods, one.saying.except]);
    for (const tracking of one.tracking === '' ? ['', '*'] : [one.tracking, '*']) {
      const name = nameOf(answer, one, tracking);
      const list = this.lists.get(name) ?? new Map<string, Told>();
      if (!list.has(alike)) list.set(alike, one);
      this.lists.set(name, list);
    }
  }

  /** The first that meets it. Followed lesions are themselves: one can be gone while another is there. */
  find(answer: Answer, one: Told, also: (other: Told) => boolean = () => true): Told | undefined {
    for (const tracking of one.tracking === '' ? ['*'] : [one.tracking, '']) {
      for (const other of this.lists.get(nameOf(answer, one, tracking))?.values() ?? []) {
        if (meet(one, other) && also(other)) return other;
      }
    }
    return undefined;
  }
}

/** Of the parts only the spot, which ends it, can hold a bar that is not within quotes of JSON. */
function nameOf(answer: Answer, { about, region, spot }: Told, tracking: string): string {
  return `${answer}|${about}|${region}|${tracking}|${spot}`;
}

/** One side, and a method in common; one that names none may have used any. */
function meet(a: Told, b: Told): boolean {
  const [mine, yours] = [a.saying.methods, b.saying.methods];
  return (
    sidesOverlap(a.side, b.side) &&
    (mine.length === 0 || yours.length === 0 || mine.some((method) => yours.includes(method)))
  );
}
