import { type Issue, toOperationOutcome } from '../../../src/index.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { canary, damagedData, damagedText, sizeOf } from './mutate.ts';
import { largeFrom } from './sound.ts';
import { type Target, targets } from './targets.ts';

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
    if (this.#inputs.length > mostParents) this.#inputs.shift();
    return true;
  }

  parent(at: number): unknown {
    return this.#inputs[at % Math.max(1, this.#inputs.length)];
  }
}

const mostParents = 300;

/** Different sound inputs of a target: small ones, and now and then a whole exam. */
const smallSeeds = 40;
const largeSeeds = 4;
const chanceOfLarge = 0.01;

/** What a run has met so far: the same seed and count make the same inputs on any machine. */
export class Run {
  readonly counts: Counts = { inputs: 0, kept: 0, slowest: 0 };
  readonly #pools = new Map<string, Pool>();

  /** One input of a target, by seed and by what was met before. */
  attempt(target: Target, seed: number): Find | undefined {
    const random = createRandom(seed);
    const pool = this.#pools.get(target.name) ?? new Pool();
    this.#pools.set(target.name, pool);
    const large = random.chance(chanceOfLarge);
    const sound = soundInput(
      target,
      large ? largeFrom + random.int(1, largeSeeds) : random.int(1, smallSeeds),
    );
    // Whole exams take long and say much at once: they are damaged, and no parents.
    const parent = !large && random.chance(0.5) ? (pool.parent(seed) ?? sound) : sound;
    const input =
      typeof parent === 'string'
        ? damagedText(parent, typeof sound === 'string' ? sound : canary, random)
        : damagedData(parent, sound, random);
    const found = tried(target, input, seed);
    this.counts.inputs += 1;
    if ('kind' in found) return found;
    this.counts.slowest = Math.max(this.counts.slowest, found.took);
    // What was put into itself again and again would grow until the memory is full.
    if (!large && sizeOf(input) <= 2 * mostSize(sound) && pool.take(input, found.issues)) {
      this.counts.kept += 1;
    }
    return undefined;
  }
}

/** Short inputs may grow to this size. */
function mostSize(sound: unknown): number {
  return Math.max(sizeOf(sound), typeof sound === 'string' ? 2000 : 100);
}

/** Sound inputs are made once; damage works on copies. */
const soundInputs = new Map<string, unknown>();

function soundInput(target: Target, seed: number): unknown {
  const name = `${target.name} ${seed}`;
  if (!soundInputs.has(name)) soundInputs.set(name, target.sound(seed));
  return soundInputs.get(name);
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
  let found: { readonly issues: readonly Issue[]; readonly took: number };
  try {
    found = timed(target, input);
    // A pause of the machine is no fault of ours: what is slow is slow each time.
    for (let again = 0; again < 2 && isSlow(found.took, input); again++) {
      found = timed(target, input);
    }
  } catch (thrown) {
    const { message, stack = '' } = thrown instanceof Error ? thrown : new Error(String(thrown));
    const at = stack.split('\n').find((line) => line.includes('/src/')) ?? '';
    return find('throw', `${message.replaceAll(/\d+/g, 'N').slice(0, 200)} ${at.trim()}`);
  }
  if (target.adopters === undefined) {
    const leak = found.issues.find((one) => tells(one));
    if (leak !== undefined) return find('leak', `${leak.code} ${leak.facts.reason}`);
  }
  if ('polluted' in {}) {
    Reflect.deleteProperty(Object.prototype, 'polluted');
    return find('prototype', target.name);
  }
  return isSlow(found.took, input) ? find('slow', target.name) : found;
}

function timed(target: Target, input: unknown) {
  const start = process.cpuUsage();
  const issues = target.call(input as never); // damaged on purpose
  return { issues, took: process.cpuUsage(start).user / 1000 };
}

function isSlow(took: number, input: unknown): boolean {
  const hundreds = typeof input === 'string' ? Math.max(1, input.length / 100_000) : 1;
  return took > slow * hundreds;
}

/**
 * Whether a word of the input stands in what is logged, shown or sent of an issue. Keys of statements
 * are told on purpose: programs make them, and an issue must say which statement it means.
 */
function tells(issue: Issue): boolean {
  const told = JSON.stringify([issue, toOperationOutcome([issue])]);
  if (!told.includes(canary)) return false;
  const keys = 'keys' in issue.facts ? issue.facts.keys : [];
  const without = [issue.statement ?? '', ...keys]
    .map((key) => JSON.stringify(key).slice(1, -1))
    .reduce((text, key) => text.replaceAll(key, ''), told);
  return without.includes(canary);
}

export interface Extent {
  readonly seconds: number;
  readonly inputs: number;
  readonly seed: number;
}

/** Seeds of one run, so that two runs have none in common. */
const seedsOfRun = 1e9;

/**
 * Goes through the targets by turns until the inputs are made or the time is over. The inputs follow
 * from the seed alone: a machine that is slower makes the first of the same ones.
 */
export function run(
  { seconds, inputs, seed }: Extent,
  found: (find: Find) => void,
  progress: (counts: Counts) => void = () => {},
): Counts {
  const all = new Run();
  const end = performance.now() + seconds * 1000;
  for (let at = 0; at < inputs && performance.now() < end; at++) {
    const target = targets[at % targets.length];
    const find = target && all.attempt(target, seed * seedsOfRun + at);
    if (find) found(find);
    if (all.counts.inputs % 10_000 === 0) progress(all.counts);
  }
  return all.counts;
}
