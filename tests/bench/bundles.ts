import type { Bundle, BundleEntry } from 'fhir/r4.js';
import { built } from './built.ts';

const { toBundleOrThrow } = await built<typeof import('../../src/index.ts')>('index.js');
const { sampleExam } =
  await built<typeof import('../../src/testing/sample-exam.ts')>('testing/sample-exam.js');

/** A collection of just so many entries of seeded exams, in which every reference leads to an entry. */
export function bundleOf(entries: number): Bundle {
  // By address: two exams can name one person, place or device.
  const entry = new Map<string | undefined, BundleEntry>();
  for (let seed = 1; entry.size < entries; seed++) {
    for (const one of leavesFirst(collection(seed))) {
      if (!entry.has(one.fullUrl)) entry.set(one.fullUrl, one);
    }
  }
  return {
    resourceType: 'Bundle',
    type: 'collection',
    entry: [...entry.values()].slice(0, entries),
  };
}

/** The collection of the first seeded exam that has just so many entries. */
export function bundleOfOneExam(entries: number): Bundle {
  for (let seed = 1; seed < 10_000; seed++) {
    const entry = collection(seed);
    if (entry.length === entries) return { resourceType: 'Bundle', type: 'collection', entry };
  }
  throw new Error(`no seeded exam has ${entries} entries`);
}

function collection(seed: number): BundleEntry[] {
  const bundle = toBundleOrThrow(sampleExam(seed, { size: 'small' })) as Bundle; // R4 by default
  return bundle.entry ?? [];
}

/** Each entry after those that it refers to, so that any beginning of the list is closed. */
function leavesFirst(entries: readonly BundleEntry[]): BundleEntry[] {
  const ordered = new Map<string | undefined, BundleEntry>();
  for (let left = [...entries]; left.length > 0; ) {
    const ready = left.filter((one) => referencesOf(one).every((url) => ordered.has(url)));
    if (ready.length === 0) throw new Error('entries that refer to each other in a circle');
    for (const one of ready) ordered.set(one.fullUrl, one);
    left = left.filter((one) => !ordered.has(one.fullUrl));
  }
  return [...ordered.values()];
}

function referencesOf({ resource }: BundleEntry): string[] {
  const found = JSON.stringify(resource).matchAll(/"reference":"(urn:uuid:[^"]*)"/g);
  return [...found].map(([, url = '']) => url);
}
