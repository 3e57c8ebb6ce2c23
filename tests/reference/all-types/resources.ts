import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { allDefinitions, resourceTypes } from '../../validate/all-types.ts';
import type { FhirRelease } from '../corpus.ts';
import { publishedExamples } from '../definitions.ts';
import { faults } from './faults.ts';
import { moreFaults } from './more-faults.ts';
import { oddValues } from './odd-values.ts';
import type { Fault, Json } from './places.ts';

/** A published example of any type, or one with a single fault; the same on every machine. */
export interface AnyResource {
  /** File name, with the fault after it where there is one. */
  readonly id: string;
  readonly version: FhirRelease;
  readonly text: string;
  /** The first eight digits of the SHA-256 of the text. */
  readonly digest: string;
}

const LONGEST = 60_000;

/** Examples of a type that are broken. */
const OF_TYPE = 3;

/** Examples of a type that are looked at, with those. */
const FURTHER = 30;

/** Some examples of every resource type of a version, each also with one fault of each of some kinds. */
export async function anyResources(version: FhirRelease): Promise<AnyResource[]> {
  const found: AnyResource[] = [];
  const broken = await brokenExamples(version, faults, { ofType: OF_TYPE, faults: 3 });
  for (const [file, text, changed] of broken) {
    found.push(resource(file, version, text));
    for (const [name, other] of changed) found.push(resource(`${file} ${name}`, version, other));
  }
  return found;
}

/** Published examples beyond those that {@link anyResources} takes, untouched: no rule was written by them. */
export async function furtherExamples(version: FhirRelease): Promise<AnyResource[]> {
  const further = await examplesOf(version, OF_TYPE, FURTHER);
  return further.map(([file, text]) => resource(file, version, text));
}

/** The same examples, each with some faults of further kinds. */
export async function moreBroken(version: FhirRelease): Promise<AnyResource[]> {
  const broken = [
    ...(await brokenExamples(version, moreFaults, { ofType: 2, faults: 2 })),
    // Others of them, at other places of the first example.
    ...(await brokenExamples(version, moreFaults, { ofType: 1, faults: 2, start: 83 })),
  ];
  return broken.flatMap(([file, , changed]) =>
    changed.map(([name, text]) => resource(`${file} ${name}`, version, text)),
  );
}

/** Odd values, each in several types, at places by another seed. */
export async function oddlyValued(version: FhirRelease): Promise<AnyResource[]> {
  const broken = await brokenExamples(version, oddValues, { ofType: 2, faults: 4, start: 11 });
  return broken.flatMap(([file, , changed]) =>
    changed.map(([name, text]) => resource(`${file} ${name}`, version, text)),
  );
}

/** Published examples by file name: of each type those from one number up to another. */
async function examplesOf(
  version: FhirRelease,
  from: number,
  to: number,
): Promise<(readonly [file: string, text: string])[]> {
  const folder = await publishedExamples(version);
  const types = new Set(resourceTypes(version));
  const counts = new Map<string, number>();
  const found: [string, string][] = [];
  for (const file of readdirSync(folder).sort()) {
    const type = file.split('-')[0] ?? '';
    const count = counts.get(type) ?? 0;
    if (!types.has(type) || !file.endsWith('.json') || count >= to) continue;
    const text = readFileSync(join(folder, file), 'utf8').replace(/^\uFEFF/, '');
    if (text.length > LONGEST) continue;
    counts.set(type, count + 1);
    if (count >= from) found.push([file, text]);
  }
  return found;
}

type Changed = readonly (readonly [fault: string, text: string])[];

async function brokenExamples(
  version: FhirRelease,
  table: readonly (readonly [name: string, fault: Fault])[],
  most: { readonly ofType: number; readonly faults: number; readonly start?: number },
): Promise<(readonly [file: string, text: string, changed: Changed])[]> {
  const definitions = allDefinitions(version);
  let turn = most.start ?? 0;
  return (await examplesOf(version, 0, most.ofType)).map(([file, text]) => {
    const changed: [string, string][] = [];
    for (let at = 0; at < most.faults; at++) {
      const [name, fault] = table[turn % table.length] ?? [];
      turn += 1;
      // A published file is an object in JSON.
      const value = JSON.parse(text) as Json;
      if (name === undefined || fault?.(value, definitions, turn) !== true) continue;
      changed.push([name, JSON.stringify(value)]);
    }
    return [file, text, changed];
  });
}

function resource(id: string, version: FhirRelease, text: string): AnyResource {
  const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
  return { id, version, text, digest };
}
