import type { Issue } from '../../../src/index.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { canary, damagedData, damagedText } from './mutate.ts';
import { type Target, targets, toldText } from './targets.ts';

/** Something that must not be: an exception, a canary in an issue, a changed prototype, a hang. */
export interface Find {
  readonly target: string;
  readonly seed: number;
  readonly kind: 'throw' | 'leak' | 'prototype' | 'slow';
  /** Where it was, so that one fault is counted once. */
  readonly signature: string;
  readonly input: unknown;
}

export interface Counts {
  inputs: number;
  /** Inputs kept as parents, since they made the target say what no input before had. */
  kept: number;
  slowest: number;
}

/** Milliseconds of processor time for an input of up to some 100 kB. */
const slow = 1000;

/** Inputs by what they made a target say: a code and reason that was not met before is a new way. */
class Pool {
  readonly #seen = new Set<string>();
  readonly #inputs: unknown[] = [];

  /** True where the input made the target say something new. */
  take(input: unknown, issues: readonly Issue[]): boolean {
    const before = this.#seen.size;
    for (const { code, severity, facts, path } of issues.slice(0, 50)) {
      this.#seen.add(`${code} ${severity} ${facts.reason} ${path.length}`);
    }
    if (this.#seen.size === before) return false;
    this.#inputs.push(input);
    if (this.#inputs.length > 300) this.#inputs.shift();
    return true;
  }

  parent(at: number): unknown {
    return this.#inputs[at % Math.max(1, this.#inputs.length)];
  }
}

const pools = new Map<string, Pool>();

/** Sound inputs are made once; damage works on copies. */
const soundInputs = new Map<string, unknown>();

function soundInput(target: Target, seed: number): unknown {
  const name = `${target.name} ${seed}`;
  if (!soundInputs.has(name)) soundInputs.set(name, target.sound(seed));
  return soundInputs.get(name);
}

/** Different sound inputs of a target. */
const soundSeeds = 40;

/** One input of a target, by seed and by what was met before. */
export function attempt(target: Target, seed: number, counts: Counts): Find | undefined {
  const random = createRandom(seed);
  const pool = pools.get(target.name) ?? new Pool();
  pools.set(target.name, pool);
  const sound = soundInput(target, random.int(1, soundSeeds));
  const parent = random.chance(0.5) ? (pool.parent(seed) ?? sound) : sound;
  const input =
    typeof parent === 'string'
      ? damagedText(parent, typeof sound === 'string' ? sound : canary, random)
      : damagedData(parent, sound, random);
  const found = tried(target, input, seed);
  counts.inputs += 1;
  if ('kind' in found) return found;
  counts.slowest = Math.max(counts.slowest, found.took);
  if (pool.take(input, found.issues)) counts.kept += 1;
  return undefined;
}

/** Calls a target and looks at all that it says and does. */
export function tried(
  target: Target,
  input: unknown,
  seed: number,
): Find | { readonly issues: readonly Issue[]; readonly took: number } {
  const find = (kind: Find['kind'], signature: string): Find => ({
    target: target.name,
    seed,
    kind,
    signature,
    input,
  });
  const start = process.cpuUsage();
  let issues: readonly Issue[];
  try {
    issues = target.call(input as never); // damaged on purpose
  } catch (thrown) {
    const { message, stack = '' } = thrown instanceof Error ? thrown : new Error(String(thrown));
    const at = stack.split('\n').find((line) => line.includes('/src/')) ?? '';
    return find('throw', `${message.replaceAll(/\d+/g, 'N').slice(0, 200)} ${at.trim()}`);
  }
  const { user } = process.cpuUsage(start);
  if (target.adopters === undefined && toldText(issues).includes(canary)) {
    const leak = issues.find((one) => toldText([one]).includes(canary));
    return find('leak', `${leak?.code} ${leak?.facts.reason}`);
  }
  if ('polluted' in {}) {
    Reflect.deleteProperty(Object.prototype, 'polluted');
    return find('prototype', target.name);
  }
  const took = user / 1000;
  const hundreds = typeof input === 'string' ? Math.max(1, input.length / 100_000) : 1;
  return took > slow * hundreds ? find('slow', target.name) : { issues, took };
}

/** Goes through the targets by turns until the time is over or the inputs are made. */
export function run(
  {
    seconds,
    inputs,
    seed,
  }: { readonly seconds: number; readonly inputs: number; readonly seed: number },
  found: (find: Find) => void,
): Counts {
  const counts: Counts = { inputs: 0, kept: 0, slowest: 0 };
  const end = performance.now() + seconds * 1000;
  for (let at = seed; counts.inputs < inputs && performance.now() < end; at++) {
    const target = targets[at % targets.length];
    const find = target && attempt(target, at, counts);
    if (find) found(find);
  }
  return counts;
}
