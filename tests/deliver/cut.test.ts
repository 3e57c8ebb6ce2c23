import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { cutBundle } from '../../src/deliver/cut.ts';
import { inOrderOfReference } from '../../src/deliver/order.ts';
import { referencesIn } from '../../src/fhir/references.ts';
import { type Exam, type ExportOptions, toBundleOrThrow, toJson } from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { type FakeServer, startFake } from '../testing/fake-server.ts';

/**
 * Limits in use: 25 and 160 entries of two hosted services, 500 of another by default, 50 updates of
 * a platform (documentation of each, read 2026).
 */
const limits = [1, 7, 25, 50, 160, 500];

const put: ExportOptions = { ...clinic, bundleType: 'transaction' };
const exams = [
  ...[...examples.values()].slice(0, sampled(1, 99)),
  ...sampleExams(11, sampled(2, 6), { size: 'edge' }),
];

type Entry = NonNullable<ReturnType<typeof toBundleOrThrow>['entry']>[number];

/** Where an entry is stored, as the entries of other bundles refer to it. */
function placeOf({ request }: Entry): string {
  const { url = '', ifNoneExist } = request ?? {};
  return ifNoneExist === undefined ? url : `${url}?${ifNoneExist}`;
}

function openReferences(entries: readonly Entry[], known: ReadonlySet<string>): string[] {
  return entries.flatMap(({ resource }) =>
    [...referencesIn(resource)].filter((reference) => !known.has(reference)),
  );
}

/** What the receiver is said to hold. */
function isStated(exam: Exam, reference: string): boolean {
  return toJson(exam).includes(JSON.stringify(reference));
}

describe('a transaction that is cut', () => {
  it.each(limits)('has at most %i entries a bundle, in an order that resolves', (most) => {
    for (const exam of exams) {
      const whole = toBundleOrThrow(exam, put);
      const { value: pieces = [], issues } = cutBundle(whole, { most });
      expect(issues, exam.id).toEqual([]);
      const known = new Set<string>();
      for (const { entry = [], type } of pieces) {
        expect(type).toBe('transaction');
        expect(entry.length).toBeLessThanOrEqual(most);
        for (const { fullUrl = '' } of entry) known.add(fullUrl);
        expect(openReferences(entry, known).filter((name) => !isStated(exam, name))).toEqual([]);
        for (const one of entry) known.add(placeOf(one));
      }
    }
  });

  it.each(limits)('has each entry once, and the report at the end: %i', (most) => {
    for (const exam of exams) {
      const whole = toBundleOrThrow(exam, put);
      const pieces = cutBundle(whole, { most }).value ?? [];
      const urls = (entries: readonly Entry[]): string[] =>
        entries.map(({ fullUrl = '' }) => fullUrl).sort();
      const sent = pieces.flatMap(({ entry = [] }): readonly Entry[] => entry);
      expect(urls(sent)).toEqual(urls(whole.entry ?? []));
      const types = sent.map(({ resource }) => resource?.resourceType);
      const behind = types.slice(types.indexOf('DiagnosticReport') + 1);
      expect(behind.every((type) => type === 'Provenance')).toBe(true);
    }
  });

  it('is valid piece by piece, and its last version takes back what is gone', () => {
    for (const exam of sampleExams(40, sampled(2, 4), { size: 'edge' })) {
      for (const piece of cutBundle(toBundleOrThrow(exam, put), { most: 20 }).value ?? []) {
        const { issues } = validateBundle(piece);
        expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
      }
    }
  });

  it('as batches refers only to what stands in earlier ones', () => {
    for (const exam of exams) {
      const whole = toBundleOrThrow(exam, { ...put, masterData: 'own' });
      const { value: pieces = [], issues } = cutBundle(whole, { most: 50, as: 'batch' });
      expect(issues).toEqual([]);
      for (const { entry = [], type } of pieces) {
        expect(type).toBe('batch');
        const inside = new Set(entry.map(placeOf));
        for (const one of entry) {
          const others = [...referencesIn(one.resource)].filter((name) => name !== placeOf(one));
          expect(others.filter((name) => name.startsWith('urn:') || inside.has(name))).toEqual([]);
        }
      }
    }
  });

  it('as batches is refused where only the server can say what is referred to', () => {
    const exam = examples.get('skin-lesion');
    if (exam === undefined) throw new Error('no example');
    const { value, issues } = cutBundle(toBundleOrThrow(exam, put), { most: 50, as: 'batch' });
    expect(value).toBeUndefined();
    expect(issues.map(({ code }) => code)).toEqual(['missing-property']);
  });

  it('is not cut to nothing', () => {
    const whole = toBundleOrThrow([...sampleExams(1, 1)][0] ?? (undefined as never), put);
    for (const most of [0, -1, 1.5, Number.NaN]) {
      expect(() => cutBundle(whole, { most })).toThrow(RangeError);
    }
  });
});

async function sendAll(server: FakeServer, pieces: readonly object[]): Promise<void> {
  for (const piece of pieces) {
    const answer = await fetch(server.url, { method: 'POST', body: toJson(piece) });
    expect(answer.status).toBe(200);
  }
}

/** Resources as the server holds them, without the ids that it gave. */
function held(server: FakeServer): string[] {
  return [...server.stored].map(
    ([name, { resource, version }]) => `${name} ${version} ${toJson(resource)}`,
  );
}

describe('a delivery in pieces that stops and goes on', () => {
  it.each([25, 50, 160])('ends as one that never stopped, at most %i entries', async (most) => {
    const exam = examples.get('skin-lesion');
    if (exam === undefined) throw new Error('no example');
    const pieces = cutBundle(toBundleOrThrow(exam, put), { most }).value ?? [];
    const steady = await startFake();
    await sendAll(steady, pieces);
    for (let stop = 0; stop <= pieces.length; stop += sampled(4, 1)) {
      const server = await startFake();
      // The bundle at which it stopped had arrived, or had not: it is sent again.
      await sendAll(server, pieces.slice(0, stop));
      await sendAll(server, pieces.slice(Math.max(0, stop - 1)));
      expect(held(server).sort()).toEqual(held(steady).sort());
      await server.stop();
    }
    await steady.stop();
  });
});

describe('the order of reference', () => {
  it('puts everything behind what it refers to, circles together', () => {
    const random = createRandom(4);
    for (let round = 0; round < 300; round++) {
      const size = random.int(1, 12);
      const list = Array.from({ length: size }, () => ({
        refersTo: Array.from({ length: random.int(0, 3) }, () => random.int(0, size - 1)),
      }));
      const groups = inOrderOfReference(list, [...list.keys()]);
      expect(groups.flat().sort((a, b) => a - b)).toEqual([...list.keys()]);
      const reached = list.map((_, at) => reach(list, at));
      const group = new Map(groups.flatMap((members, at) => members.map((one) => [one, at])));
      for (const from of list.keys()) {
        for (const to of reached[from] ?? []) {
          expect(group.get(to)).toBeLessThanOrEqual(group.get(from) ?? -1);
          expect(group.get(to) === group.get(from)).toBe(from === to || reached[to]?.has(from));
        }
      }
    }
  });

  it('follows a chain of any length', () => {
    const list = Array.from({ length: 50_000 }, (_, at) => ({
      refersTo: at === 0 ? [] : [at - 1],
    }));
    const groups = inOrderOfReference(list, [49_999]);
    expect(groups.map(([at]) => at)).toEqual([...list.keys()]);
  });
});

/** Everything that can be reached from a place, by definition. */
function reach(list: readonly { refersTo: readonly number[] }[], from: number): Set<number> {
  const found = new Set<number>();
  const open = [from];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const to of list[at]?.refersTo ?? []) {
      if (found.has(to)) continue;
      found.add(to);
      open.push(to);
    }
  }
  return found;
}
