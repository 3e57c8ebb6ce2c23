import { isDeepStrictEqual } from 'node:util';
import { expect } from 'vitest';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';
import { pathText } from '../../src/issues/path.ts';
import type { Exam } from '../../src/model/exam.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { clinic } from '../clinic.ts';
import { everyExport } from './round-trip.ts';
import { type Json, spots } from './spots.ts';

/** Which spots are tried: one of so many. */
export interface Sampled {
  readonly exam: Exam;
  readonly turn: number;
  readonly of: number;
  /** Only spots of this name. */
  readonly only?: string;
}

/** What is generated from the data, repeats where a reference leads, or is a fact of the export alone. */
const mayVary = [/\.text\.div$/, /\.request(\.|$)/, /^type$/, /coding\[\d+\]\.version$/];

/** Values whose change cannot be seen in the exam, in an error or in the remainder. */
export function unseenChanges({ exam, turn, of, only }: Sampled): string[] {
  const bundle = bundleOf(exam, turn);
  const unseen: string[] = [];
  for (const [at, { holder, step, path }] of [...spots(bundle)].entries()) {
    const value = holder[step];
    const text = pathText(path);
    if (at % of !== turn % of || typeof value === 'object') continue;
    if (only !== undefined && step !== only) continue;
    if (mayVary.some((pattern) => pattern.test(text))) continue;
    holder[step] = changed(value);
    if (!isSeen(bundle, exam)) unseen.push(text);
    holder[step] = value;
  }
  return unseen;
}

/** Objects that can hold a further property without its standing in the remainder. */
export function unseenAdditions({ exam, turn, of }: Sampled): string[] {
  const bundle = bundleOf(exam, turn);
  const unseen: string[] = [];
  for (const [at, { holder, step, path }] of [...spots(bundle)].entries()) {
    const value = holder[step];
    const text = pathText(path);
    if (at % of !== turn % of || typeof value !== 'object' || Array.isArray(value)) continue;
    // Generated text and requests are taken as wholes.
    if (value === null || /(^|\.)(text|request)$/.test(text)) continue;
    const object = value as Json;
    object.further = 'said by someone else';
    const { remainder } = fromBundle(bundle, clinic);
    const told = remainder.some((part) => {
      const whole = pathText(part.path);
      return (
        whole === '' || `${text}.further.`.startsWith(`${whole}.`) || text.startsWith(`${whole}[`)
      );
    });
    if (!told) unseen.push(text);
    delete object.further;
  }
  return unseen;
}

/** Puts values of every kind in place of others: an exam or issues, never an exception. */
export function expectAnswerToAnyValue({ exam, turn, of }: Sampled): void {
  const bundle = bundleOf(exam, turn);
  for (const [at, { holder, step }] of [...spots(bundle)].entries()) {
    if (at % of !== turn % of) continue;
    const value = holder[step];
    for (const wrong of [null, [], {}, '', 7, [[]], [null], '__proto__', { reference: '#' }]) {
      holder[step] = wrong;
      const { value: read, issues } = fromBundle(bundle);
      expect(read !== undefined || issues.length > 0).toBe(true);
    }
    holder[step] = value;
  }
}

export function bundleOf(exam: Exam, turn: number): Json {
  const bundle = toBundleOrThrow(exam, everyExport[turn % everyExport.length]);
  // By way of its text, so that no two places share an object and decimals stay as they are.
  return fromJson(toJson(bundle)).value as Json;
}

/** Another value of the same type. */
function changed(value: unknown): unknown {
  if (typeof value === 'string') return /^\d/.test(value) ? `1${value.slice(1)}1` : `${value}x`;
  if (typeof value === 'number') return value * 2 + 1;
  return !value;
}

function isSeen(bundle: object, exam: Exam): boolean {
  const { value, issues, remainder } = fromBundle(bundle, clinic);
  if (value === undefined || remainder.length > 0) return true;
  return issues.some(({ severity }) => severity === 'error') || !isDeepStrictEqual(value, exam);
}
