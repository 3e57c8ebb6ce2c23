import { createHash } from 'node:crypto';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { orThrow } from '../../src/issues/issue.ts';
import { applyFault, faults } from '../../src/testing/faults/apply-fault.ts';
import type { Base } from './bases.ts';
import type { FhirRelease } from './corpus.ts';

/** A sound bundle with one fault; the same on every machine. */
export interface MutantCase {
  readonly fault: string;
  readonly version: FhirRelease;
  readonly base: string;
  readonly seed: number;
  readonly text: string;
  /** The first eight digits of its SHA-256, by which a kept verdict knows its text. */
  readonly digest: string;
}

const FOR_EACH_FAULT = 6;
const SEEDS = 6;

/** Up to six different mutants of each kind of fault, spread over the bases of a version. */
export function* mutants(bases: readonly Base[], version: FhirRelease): Generator<MutantCase> {
  const own = bases
    .filter((base) => base.version === version)
    .map(({ name, text }) => ({ name, bundle: parsed(text) }));
  for (const [at, fault] of faults.entries()) {
    if (!fault.versions.includes(version)) continue;
    const seen = new Set<string>();
    for (let turn = 0; turn < own.length * SEEDS && seen.size < FOR_EACH_FAULT; turn++) {
      const base = own[(at + turn) % own.length];
      const seed = at * 100 + turn;
      const text = base && applyFault(fault.id, base.bundle, seed)?.text;
      if (base === undefined || text === undefined) continue;
      const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
      if (seen.has(digest)) continue;
      seen.add(digest);
      yield { fault: fault.id, version, base: base.name, seed, text, digest };
    }
  }
}

function parsed(text: string): object {
  // A base is the JSON text of a bundle.
  return orThrow('read a base', fromJson(text)) as object;
}
