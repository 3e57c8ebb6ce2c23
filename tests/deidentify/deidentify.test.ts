import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createCellCounter, deidentifiedLabels, deidentify } from '../../src/deidentify/index.ts';
import { keptNames, leftOut, madeAnew } from '../../src/deidentify/statements.ts';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { toFlat } from '../../src/flat/index.ts';
import { type Exam, orThrow, parseExamOrThrow } from '../../src/index.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { sampled } from '../sampled.ts';

const secret = '8b1a9953c4611296a827abf8c47804d7';
const count = sampled(10, 400);
const exams: readonly Exam[] = [
  ...sampleExams(1, count, { size: 'small' }),
  ...sampleExams(1, Math.ceil(count / 5), { size: 'edge' }),
];
const identity = 'https://clinic.example/records';
const without = (exam: Exam, dates?: 'shift' | 'year' | { days: number }): Exam =>
  orThrow('de-identify', deidentify(exam, { secret, ...(dates && { dates }) }));

interface Schema {
  readonly $ref?: string;
  readonly oneOf?: readonly Schema[];
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
}
const schemaFile = new URL('../../profiles/exam.schema.json', import.meta.url);
const { definitions }: { definitions: Readonly<Record<string, Schema>> } = JSON.parse(
  readFileSync(schemaFile, 'utf8'),
);

/** Types whose values somebody put in words, or that number or address someone or something. */
const telling = new Set(['Text', 'Key', 'Uri', 'ExistingReference']);

/** Whether the closed values of a schema fit: of several, it is by them that one is chosen. */
const fits = (
  value: Readonly<Record<string, unknown>>,
  { $ref, oneOf, properties }: Schema,
): boolean => {
  if ($ref !== undefined) return fits(value, definitions[$ref.slice(14)] ?? {});
  if (oneOf !== undefined) return oneOf.some((one) => fits(value, one));
  return Object.entries(properties ?? {}).every(([name, one]) => {
    const closed = one.enum ?? (one.const === undefined ? undefined : [one.const]);
    return closed === undefined || value[name] === undefined || closed.includes(value[name]);
  });
};

/** A value with a canary at the end of every text of these types; `found` counts them. */
function planted(value: unknown, schema: Schema, found: { count: number }): unknown {
  const { $ref, oneOf, items, properties } = schema;
  if ($ref !== undefined) {
    const name = $ref.slice('#/definitions/'.length);
    if (!telling.has(name)) return planted(value, definitions[name] ?? {}, found);
    found.count += 1;
    const text = String(value);
    // A key of the longest length has its own end; other limits are far.
    return name === 'Key' && text.length > 194
      ? `canary${text.slice(6)}`
      : `${text.slice(0, 1900)}canary`;
  }
  if (Array.isArray(value)) return value.map((one) => planted(one, items ?? {}, found));
  if (typeof value !== 'object' || value === null) return value;
  const all = Object.entries(value);
  const one = oneOf?.find((each) => fits(Object.fromEntries(all), each));
  if (one !== undefined) return planted(value, one, found);
  return Object.fromEntries(
    all.map(([name, member]) => [name, planted(member, properties?.[name] ?? {}, found)]),
  );
}

/** The exam with canaries; the version of a scale is one of a list, which parseExam holds it to. */
function withCanaries(exam: Exam): { exam: Exam; count: number } {
  const found = { count: 0 };
  // The same shape with other texts, which parseExam looks at.
  const made = planted(exam, { $ref: '#/definitions/Exam' }, found) as Exam;
  const statements = made.statements.map((one, at) => {
    const given = exam.statements[at];
    return one.kind === 'scale-score' && given?.kind === 'scale-score'
      ? { ...one, version: given.version }
      : one;
  });
  return { exam: parseExamOrThrow({ ...made, statements }), count: found.count };
}

describe('what is left of an exam', () => {
  it('has no text, key, name, number or address of the one given, in any form', () => {
    let all = 0;
    for (const given of exams) {
      const { exam, count: each } = withCanaries(given);
      all += each;
      for (const dates of ['shift', 'year'] as const) {
        const made = without(exam, dates);
        const bundle = toBundleOrThrow(made, {
          identity,
          bundleType: 'document',
          filing: { security: deidentifiedLabels },
        });
        const rows = orThrow('flatten', toFlat(made));
        const written = JSON.stringify([made, bundle, rows]);
        expect(written.includes('canary'), exam.id).toBe(false);
      }
    }
    expect(all).toBeGreaterThan(exams.length * 20);
  });

  it('has every statement that is not words or a picture, with its codes and figures', () => {
    for (const exam of exams) {
      const made = without(exam);
      const words = new Set(['note', 'image']);
      const before = orThrow('flatten', toFlat(exam)).filter(({ kind }) => !words.has(kind));
      const after = orThrow('flatten', toFlat(made));
      const scores = before.filter(({ kind }) => kind === 'scale-score').length;
      expect(after.length).toBeGreaterThanOrEqual(before.length - scores);
      const answer = (row: (typeof after)[number]): string =>
        JSON.stringify([
          row.kind,
          row.region,
          row.side,
          row.code,
          row.part,
          row.state,
          row.answer,
          row.value,
          row.unit,
          row.readings,
          row.reason,
          row.methods,
        ]);
      const stated = new Set(before.map(answer));
      for (const row of after) expect(stated.has(answer(row)), exam.id).toBe(true);
    }
  });

  it('has other dates, all moved by the same days, or the year alone', () => {
    let moved = 0;
    for (const exam of exams) {
      const made = without(exam, { days: 41 });
      const whole = exam.performed.start.includes('T');
      const day = (text: string): number =>
        Math.round((Date.parse(text) - Date.parse(exam.recorded)) / 86_400_000);
      if (whole && made.performed.start.length > 4) {
        moved += 1;
        expect(day(made.recorded), exam.id).toBe(41);
        expect(Date.parse(made.performed.start) - Date.parse(exam.performed.start)).toBe(
          41 * 86_400_000,
        );
      }
    }
    expect(moved).toBeGreaterThan(count / 2);
  });

  it('has no time of the exam given', () => {
    for (const exam of exams) {
      const given = new Set(JSON.stringify(exam).match(/\d{4}-\d\d-\d\dT[^"]*/g));
      for (const dates of [undefined, 'year', { days: 41 }] as const) {
        const times = JSON.stringify(without(exam, dates)).match(/\d{4}-\d\d-\d\dT[^"]*/g) ?? [];
        for (const time of times) expect(given.has(time), exam.id).toBe(false);
      }
      const years = JSON.stringify(without(exam, 'year')).match(/\d{4}-\d\d-\d\d[^"]*/g) ?? [];
      for (const time of years) expect(time).toMatch(/-01-01T00:00:00Z$/);
    }
  });

  it('has ids that the secret alone decides: the same again, others by another', () => {
    for (const exam of exams.slice(0, 10)) {
      expect(without(exam)).toEqual(without(exam));
      const other = orThrow('de-identify', deidentify(exam, { secret: `${secret}x` }));
      expect(other.id).not.toBe(without(exam).id);
      expect(other.subject.identifiers).not.toEqual(without(exam).subject.identifiers);
    }
  });

  it('leads from one exam of a patient to the next, moved by the same days', () => {
    const [exam] = exams;
    if (exam === undefined) throw new TypeError('no exam');
    const next = { ...exam, id: `${exam.id}-next` };
    const [one, two] = [without(exam), without(next)];
    expect(two.subject).toEqual(one.subject);
    expect(two.recorded).toBe(one.recorded);
    expect(two.id).not.toBe(one.id);
  });

  it('is a valid record that says what was done to it', () => {
    const security = deidentifiedLabels;
    for (const exam of exams.slice(0, 8)) {
      const bundle = toBundleOrThrow(without(exam), { identity, filing: { security } });
      expect(validateBundle(bundle).issues.filter(({ severity }) => severity === 'error')).toEqual(
        [],
      );
      expect(bundle.meta?.security).toEqual(security);
      const observations = (bundle.entry ?? []).flatMap(({ resource }) =>
        resource?.resourceType === 'Observation' ? [resource] : [],
      );
      for (const { meta } of observations) expect(meta?.security).toEqual(security);
    }
    expect(security.map(({ code }) => code)).toEqual(['PSEUDED', 'REDACTED']);
  });
});

it('every property of a statement is decided on', () => {
  const kinds = ['Normal', 'Partial', 'NotExamined', 'Finding', 'FunctionTest', 'Image', 'Note'];
  const others = [
    'Measurement',
    'Movement',
    'Sensation',
    'SensationComparison',
    'ScaleScore',
    'Symptom',
  ];
  const inner = ['Attribute', 'ModalityResult', 'ScaleItem', 'Quantity', 'Reason', 'ExceptedPlace'];
  for (const name of [...kinds, ...others, ...inner]) {
    const names = Object.keys(definitions[name]?.properties ?? {});
    expect(names.length, name).toBeGreaterThan(1);
    for (const one of names) {
      const decided = [keptNames, madeAnew, leftOut].filter((list) => list.has(one));
      expect(decided.length, `${name}.${one}`).toBe(1);
    }
  }
});

describe('options', () => {
  const [exam] = exams;
  it.each([
    ['a short secret', { secret: 'short' }],
    ['no secret', {}],
    ['a shift of none', { secret, dates: { days: 0 } }],
    ['a shift that is no number', { secret, dates: { days: '5' } }],
    ['no options', undefined],
  ])('%s gives an issue', (_, options) => {
    // As JavaScript would call it.
    const outcome = deidentify(exam as Exam, options as { secret: string });
    expect(outcome.ok).toBe(false);
    expect(JSON.stringify(outcome.issues)).not.toContain(secret);
  });
});

it('cells with few patients are told, and no patient counts twice', () => {
  const [exam] = exams.filter(({ statements }) =>
    statements.some(
      (one) =>
        one.kind === 'finding' && one.presence === 'present' && one.certainty !== 'suspected',
    ),
  );
  if (exam === undefined) throw new TypeError('no exam with a sign');
  const cells = createCellCounter({ least: 3 });
  const of = (number: number): Exam => ({
    ...exam,
    subject: { identifiers: [{ system: 'urn:x', value: String(number) }] },
  });
  for (const number of [1, 1, 2]) cells.add(of(number));
  expect(cells.small().length).toBeGreaterThan(0);
  for (const { patients } of cells.small()) expect(patients).toBe(2);
  cells.add(of(3));
  expect(cells.small()).toEqual([]);
});
