import { sectionOf, standingOf, subjectOf } from '../kinds/registries/meanings.ts';
import { inPageOrder, markOf } from '../kinds/registries/pages.ts';
import type { Exam } from '../model/exam.ts';
import type { Key } from '../model/primitive.ts';
import type { Statement } from '../model/statement.ts';
import type { Catalogue } from '../terminology/catalogue.ts';

/** What is abnormal in one part of the body. */
export interface AbnormalPart {
  /** Code of the section of the exam. */
  readonly section: string;
  /** Each with a number, on the drawing too. */
  readonly signs: readonly Statement[];
  /** Regions found abnormal as a whole whose signs are named above. */
  readonly states: readonly Statement[];
}

/**
 * What is abnormal, part by part, and in each part sign by sign: first those that the conclusion rests
 * on, then in the order of the body. A region found abnormal is a sign of its own only where nothing says what was found there.
 */
export function abnormalParts(exam: Exam, catalogue: Catalogue): readonly AbnormalPart[] {
  const signs = inPageOrder(exam.statements).filter(
    (statement) => markOf(statement, catalogue) === 'sign',
  );
  const named = new Set(
    signs.filter((sign) => !isOfRegion(sign)).map((sign) => placeKey(sign, catalogue)),
  );
  const parts = new Map<string, { signs: Statement[]; states: Statement[] }>();
  for (const sign of signs) {
    const section = sectionOf(sign, catalogue);
    const part = parts.get(section) ?? { signs: [], states: [] };
    parts.set(section, part);
    const told = isOfRegion(sign) && named.has(placeKey(sign, catalogue));
    (told ? part.states : part.signs).push(sign);
  }
  const basis = new Set(exam.conclusion?.basedOn ?? []);
  const rank = (section: string, { signs: inPart }: { signs: readonly Statement[] }): number =>
    (inPart.some(({ key }) => basis.has(key)) ? 0 : 1000) + orderOf(section, catalogue);
  const first = (some: readonly Statement[]): Statement[] => [
    ...some.filter(({ key }) => basis.has(key)),
    ...some.filter(({ key }) => !basis.has(key)),
  ];
  return [...parts]
    .map(([section, { signs: inPart, states }]) => ({ section, signs: first(inPart), states }))
    .map((part) => ({ ...part, rank: rank(part.section, part) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ section, signs: inPart, states }) => ({ section, signs: inPart, states }));
}

/** Number of each sign, from 1, in the order in which they are told. */
export function signNumbers(parts: readonly AbnormalPart[]): ReadonlyMap<Key, number> {
  return new Map(parts.flatMap(({ signs }) => signs).map(({ key }, at) => [key, at + 1]));
}

/** Place of a section of the exam in the order of the body; what has none comes last. */
export function orderOf(section: string, catalogue: Catalogue): number {
  return catalogue.sections.get(section)?.order ?? 999;
}

function isOfRegion(statement: Statement): boolean {
  return subjectOf(statement).table === 'regions';
}

function placeKey(statement: Statement, catalogue: Catalogue): string {
  const { region, side } = standingOf(statement, catalogue);
  return `${region}/${side}`;
}
