import { startingResponse } from '../../../src/forms/index.ts';
import {
  builtInCatalogue,
  type Comparison,
  checkExam,
  type Exam,
  fromBundle,
  fromJson,
  type Outcome,
  parseExam,
} from '../../../src/index.ts';
import type { Before, Saved } from './saved.ts';

/** Reads the exam before from a file: an exam of this library as JSON, or a bundle made of one. */
export function readPrior(text: string): Outcome<Exam> {
  const parsed = fromJson(text);
  if (!parsed.ok) return parsed;
  const data: unknown = parsed.value;
  const isBundle = typeof data === 'object' && data !== null && 'resourceType' in data;
  return isBundle ? fromBundle(data) : parseExam(data);
}

/** Why the exam before is not shown: it is of somebody else, was withdrawn, or is not earlier. */
export function whyNotShown(exam: Exam, before: Before): readonly string[] {
  // It depends on the two heads, and not on what is said.
  return checkExam({ ...exam, statements: [] }, comparedWith(before))
    .issues.filter(({ path }) => path[0] === 'prior')
    .map(({ message }) => message);
}

export function comparedWith({ exam, isAssumed }: Before): {
  readonly prior: Exam;
  readonly samePatient?: 'assumed';
} {
  return { prior: exam, ...(isAssumed && { samePatient: 'assumed' as const }) };
}

/** By linkId, what was said last time, with its day. Words, so that nothing can be taken over. */
export function lastTimeTexts({ before, head }: Saved): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  if (before === undefined) return texts;
  const response = startingResponse(head.protocol.id, { lastTime: true, prior: before.exam });
  if (!response.ok) return texts;
  type Items = NonNullable<typeof response.value.item>;
  const walk = (items: Items): void => {
    for (const { linkId, answer, item } of items) {
      const text = answer?.[0]?.valueString;
      if (linkId.startsWith('last:') && text !== undefined) texts.set(linkId.slice(5), text);
      walk(item ?? []);
    }
  };
  walk(response.value.item ?? []);
  return texts;
}

/** What changed since, in one line; nothing is concluded from it. */
export function comparisonText(one: Comparison): string {
  const { code, region, side, change, figures, values, days } = one;
  const { findings, measures, testPoints, regions } = builtInCatalogue;
  const row = [findings, measures, testPoints, regions].find((table) => table.has(code))?.get(code);
  const what = row?.display ?? code;
  const place = region && builtInCatalogue.regions.get(region)?.display;
  const where = [place ?? region, side]
    .filter((part) => part !== undefined && part !== what)
    .join(', ');
  const figure = figures && `${figures.before.value} to ${figures.now.value} ${figures.now.unit}`;
  const value = values && `${values.before} to ${values.now}`;
  const since = days === undefined ? '' : ` (${days} days)`;
  const told = [change, figure ?? value].filter((part) => part !== undefined).join(': ');
  return `${what}${where === '' ? '' : `, ${where}`}: ${told}${since}`;
}
