import { describe, expect, it } from 'vitest';
import { type Exam, toBundle, toBundleOrThrow, toJson } from '../../src/index.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { createRandom } from '../../src/testing/random.ts';
import { sampleExam, sampleExams } from '../../src/testing/sample-exam.ts';
import { withOnly } from '../../src/testing/without.ts';
import { validateBundle as validateR4 } from '../../src/validate/versions/r4.ts';
import { validateBundle as validateR5 } from '../../src/validate/versions/r5.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';

const versions = [
  ['R4', validateR4],
  ['R5', validateR5],
] as const;

interface Sent {
  readonly resourceType: string;
  readonly id: string;
  readonly status?: string;
}

/** The exam with about half of its statements, and without its plan, its instruments and its history. */
function shorter(exam: Exam, seed: number): Exam {
  const random = createRandom(seed);
  const some = exam.statements.filter(() => random.chance(0.5));
  return withOnly(exam, some, new Set(['consents', 'conditions']));
}

/** The resources of a transaction; one to which the server gives the id has ours in its `fullUrl`. */
function sentIn(bundle: object): Sent[] {
  const { entry } = JSON.parse(toJson(bundle));
  return entry.map(({ resource, fullUrl }: { resource: Sent; fullUrl: string }) => ({
    ...resource,
    id: resource.id ?? fullUrl.replace('urn:uuid:', ''),
  }));
}

/** Of the types that say something of the patient and have a status to take them back by, sorted. */
function retractableIds(sent: readonly Sent[]): string[] {
  const types = /^(?:Observation|ServiceRequest|Media|DocumentReference|DetectedIssue)$/;
  return sent.flatMap(({ id, resourceType }) => (types.test(resourceType) ? [id] : [])).sort();
}

function withdrawnIds(sent: readonly Sent[]): string[] {
  return sent.flatMap(({ id, status }) => (status === 'entered-in-error' ? [id] : [])).sort();
}

describe.each(versions)('an exam sent again with less in it, as %s', (fhirVersion, validate) => {
  const transaction = { ...clinic, fhirVersion, bundleType: 'transaction' } as const;
  const exams = [
    ...sampleExams(1, sampled(3, 12), { size: 'small' }),
    ...sampleExams(1, sampled(3, 12), { size: 'edge' }),
    ...sampleExams(1, sampled(1, 2), { size: 'usual' }),
  ];

  it('takes back what it no longer holds, and is otherwise the same', () => {
    let taken = 0;
    for (const [seed, earlier] of exams.entries()) {
      const exam = shorter(earlier, seed);
      const before = sentIn(toBundleOrThrow(earlier, transaction));
      const alone = sentIn(toBundleOrThrow(exam, transaction));
      const bundle = toBundleOrThrow(exam, { ...transaction, previous: earlier });
      const sent = sentIn(bundle);
      expect(sent.slice(0, alone.length)).toEqual(alone);
      const held = new Set(alone.map(({ id }) => id));
      const gone = retractableIds(before).filter((id) => !held.has(id));
      expect(withdrawnIds(sent.slice(alone.length))).toEqual(gone);
      expect(validate(bundle).issues.filter(({ severity }) => severity === 'error')).toEqual([]);
      // Of a record that is in error as a whole nothing tells what was taken back before.
      if (exam.status !== 'entered-in-error')
        expect(fromBundle(bundle, clinic).value).toEqual(exam);
      taken += gone.length;
    }
    expect(taken).toBeGreaterThan(sampled(40, 200));
  });

  it('takes back nothing where nothing is gone', () => {
    const exam = sampleExam(3, { size: 'small' });
    const again = toBundleOrThrow(exam, { ...transaction, previous: exam });
    expect(sentIn(again)).toEqual(sentIn(toBundleOrThrow(exam, transaction)));
  });
});

describe('the version sent before', () => {
  const exam = sampleExam(3, { size: 'small' });

  it('must be of the same exam', () => {
    const previous = sampleExam(4, { size: 'small' });
    const { value, issues } = toBundle(exam, { ...clinic, bundleType: 'transaction', previous });
    expect(value).toBeUndefined();
    expect(issues.map(({ code, path }) => ({ code, path }))).toContainEqual({
      code: 'invalid-value',
      path: ['previous', 'id'],
    });
  });

  it('can be the transaction that it was sent in, which holds what was taken back before', () => {
    for (const mode of ['put', 'conditional'] as const) {
      const options = { ...clinic, bundleType: 'transaction', transaction: mode } as const;
      const [one, two, three] = [1, 2, 3].map((count) =>
        withOnly(exam, exam.statements.slice(0, -2 * count), new Set()),
      ) as [Exam, Exam, Exam]; // a map keeps the number of items
      const first = toBundleOrThrow(one, options);
      const second = toBundleOrThrow(two, { ...options, previous: first });
      expect(toJson(second)).toBe(toJson(toBundleOrThrow(two, { ...options, previous: one })));
      const third = toBundleOrThrow(three, { ...options, previous: second });
      const alone = sentIn(toBundleOrThrow(three, options));
      const held = new Set(alone.map(({ id }) => id));
      const ever = new Set([...retractableIds(sentIn(first)), ...retractableIds(sentIn(second))]);
      const gone = [...ever].filter((id) => !held.has(id)).sort();
      expect(withdrawnIds(sentIn(third).slice(alone.length))).toEqual(gone);
      const fromTwo = withdrawnIds(
        sentIn(toBundleOrThrow(three, { ...options, previous: two })).slice(alone.length),
      );
      expect(fromTwo.length).toBeLessThan(gone.length);
      // Sent again, the same.
      expect(toJson(toBundleOrThrow(three, { ...options, previous: third }))).toBe(toJson(third));
    }
  });

  it('must be a transaction of the same exam', () => {
    const other = toBundleOrThrow(sampleExam(4, { size: 'small' }), {
      ...clinic,
      bundleType: 'transaction',
    });
    const collection = toBundleOrThrow(exam);
    const own = toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction' });
    const broken = { ...own, entry: [{}] };
    for (const previous of [other, collection, broken]) {
      const { value, issues } = toBundle(exam, { ...clinic, bundleType: 'transaction', previous });
      expect(value).toBeUndefined();
      expect(issues.filter(({ path }) => path[0] === 'previous')).toHaveLength(1);
    }
  });

  it('must be an exam', () => {
    // A caller without types.
    const previous = { ...exam, statements: [{}] } as unknown as Exam;
    const { value, issues } = toBundle(exam, { ...clinic, bundleType: 'transaction', previous });
    expect(value).toBeUndefined();
    expect(issues.some(({ path }) => path[0] === 'previous')).toBe(true);
  });

  it('matters to transactions only', () => {
    const previous = sampleExam(3, { size: 'small' });
    const less = withOnly(exam, [], new Set());
    expect(toJson(toBundleOrThrow(less, { previous })).length).toBe(
      toJson(toBundleOrThrow(less)).length,
    );
  });
});
