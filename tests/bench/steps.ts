import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Exam } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { built, root } from './built.ts';
import { middle, takeTurns } from './timing.ts';

/** One step as a user takes it, and what it is measured against. */
export interface Step {
  readonly name: string;
  readonly unit: 'JSON.stringify to bytes' | 'JSON.parse';
  /** The ratio that is aimed at, where there is one. */
  readonly aim?: number;
  readonly call: () => unknown;
}

/** Ratio of a step to its unit, with the quartiles of its rounds. */
export interface Ratio {
  readonly name: string;
  readonly unit: Step['unit'];
  readonly aim?: number;
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  readonly milliseconds: number;
}

/** What was measured, and on how large a bundle. */
export interface Steps {
  readonly entries: number;
  readonly characters: number;
  readonly ratios: readonly Ratio[];
}

/**
 * Every step from exam to bytes and back for one exam, each from fresh data to what the user is left
 * with: an export is made anew before it is written, and a text is looked at from its first letter. The
 * steps take turns, after as many rounds to warm up; times are of the processor, all threads.
 * @param file an exam as JSON
 */
export async function measureSteps(file: string, rounds: number): Promise<Steps> {
  const {
    checkExam,
    fromBundle,
    fromJson,
    licenceIssues,
    parseExam,
    toBundleOrThrow,
    toJson,
    toNdjson,
  } = await built<typeof import('../../src/index.ts')>('index.js');
  const { validateBundle } =
    await built<typeof import('../../src/validate/versions/r4.ts')>('validate/versions/r4.js');
  const { fromXml, toXml } =
    await built<typeof import('../../src/fhir/xml/index.ts')>('fhir/xml/index.js');
  const { toHtml } = await built<typeof import('../../src/report/index.ts')>('report/index.js');

  // An exam is what its schema says; the examples are checked by the tests.
  const exam = JSON.parse(readFileSync(join(root, file), 'utf8')) as Exam;
  const text = toJson(toBundleOrThrow(exam));
  const bundle = JSON.parse(text);
  if (toNdjson(exam, clinic).lines.size === 0) throw new Error('the example gives no lines');
  const written = toXml(bundle);
  if (!written.ok) throw new Error('the example cannot be written as XML');
  const xml = written.value;
  const literal = new Function(`return ${text}`) as () => object; // as a developer would write it by hand

  const stringify = 'JSON.stringify to bytes';
  const parse = 'JSON.parse';
  const steps: Step[] = [
    { name: 'plain object literals of the same bundle', unit: stringify, call: literal },
    { name: 'toBundle', unit: stringify, aim: 1.2, call: () => toBundleOrThrow(exam) },
    {
      name: 'exam to bytes: toBundle, toJson, Buffer',
      unit: stringify,
      aim: 1.8,
      call: () => Buffer.from(toJson(toBundleOrThrow(exam))),
    },
    {
      name: 'exam to lines of NDJSON, as bytes',
      unit: stringify,
      aim: 1.8,
      call: () => Buffer.from([...toNdjson(exam, clinic).lines.values()].flat().join('\n')),
    },
    { name: 'parseExam, a part of toBundle', unit: stringify, call: () => parseExam(exam) },
    {
      name: 'licenceIssues, a part of toBundle',
      unit: stringify,
      call: () => licenceIssues(bundle, 'free-set'),
    },
    { name: 'checkExam', unit: stringify, call: () => checkExam(exam) },
    { name: 'toHtml', unit: stringify, call: () => toHtml(exam) },
    {
      name: 'validateBundle of a parsed object',
      unit: stringify,
      aim: 2,
      call: () => validateBundle(bundle),
    },
    {
      name: 'text to verdict: fromJson, validateBundle',
      unit: stringify,
      aim: 4,
      call: () => validateBundle(fromJson(text).value),
    },
    { name: 'toXml', unit: stringify, aim: 4, call: () => toXml(bundle) },
    { name: 'fromXml', unit: stringify, aim: 6, call: () => fromXml(xml) },
    { name: 'fromJson', unit: parse, aim: 1.5, call: () => fromJson(text) },
    { name: 'fromBundle', unit: parse, aim: 5, call: () => fromBundle(bundle) },
  ];
  const units: Record<Step['unit'], () => unknown> = {
    [stringify]: () => Buffer.from(JSON.stringify(bundle)),
    [parse]: () => JSON.parse(text),
  };

  const times = takeTurns([...steps.map(({ call }) => call), ...Object.values(units)], rounds);
  const unitTimes = new Map(
    Object.keys(units).map((name, at) => [name, middle(times[steps.length + at] ?? [])]),
  );
  return {
    entries: bundle.entry.length,
    characters: text.length,
    ratios: steps.map(({ name, unit, aim }, at) => {
      const sorted = [...(times[at] ?? [])].sort((a, b) => a - b);
      const of = unitTimes.get(unit) ?? Number.NaN;
      const quartile = (part: number) => (sorted[Math.floor(sorted.length * part)] ?? 0) / of;
      const milliseconds = middle(sorted);
      return {
        name,
        unit,
        ...(aim !== undefined && { aim }),
        ratio: milliseconds / of,
        low: quartile(0.25),
        high: quartile(0.75),
        milliseconds,
      };
    }),
  };
}
