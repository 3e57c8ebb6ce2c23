import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { toNdjson } from '../../src/export/to-ndjson.ts';
import { type FlatRow, toFlat } from '../../src/flat/index.ts';
import { type Exam, orThrow } from '../../src/index.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';
import { seededCount } from '../reference/exams.ts';
import { ask, viewsByDuckDb, viewsByMedplum } from './programs.ts';

// The shipped views in two engines that others wrote, beside the rows that toFlat makes of the exams
// without FHIR: every statement of each kind once, with the same place, time, answer, unit and reason.
// https://sql-on-fhir.org/ig/StructureDefinition-ViewDefinition.html

const folder = fileURLToPath(new URL('../../profiles/views/', import.meta.url));
const made = fileURLToPath(new URL('../../output/readers/views/', import.meta.url));

const share = Math.max(6, Math.round(seededCount / 10));
const exams: readonly Exam[] = [
  ...sampleExams(1, share, { size: 'edge' }),
  ...sampleExams(1, share, { size: 'small' }),
];
const flat = exams.flatMap((exam) => orThrow('flatten', toFlat(exam)));
const statusOf = new Map(exams.map(({ id, status }) => [id, status]));

type Row = Readonly<Record<string, string | number | null>>;
type Tuple = readonly (string | number)[];

interface Place {
  readonly region: string;
  readonly side: string;
}
// The columns stand in its first line.
const places = new Map(
  (
    parse(readFileSync(join(folder, 'places.csv')), { columns: true }) as (Place & {
      readonly place: string;
    })[]
  ).map((row) => [row.place, row]),
);

const text = (value: string | number | null | undefined): string => String(value ?? '');

/** What DuckDB and JSON write in two ways: an instant is one, and a date of less precision a text. */
function instant(value: string | number | null | undefined): string | number {
  const said = text(value);
  return said.length > 10 ? Date.parse(said) : said;
}

const figure = (value: string | number | null | undefined): string | number =>
  text(value) === '' ? '' : Number(value);

/** Withdrawn or not made as a whole, or standing. */
const standing = (status: unknown): string =>
  status === 'cancelled' || status === 'entered-in-error' ? status : 'standing';

/** A complaint can have a side without a region, which then stands in a column of its own. */
function placeOf({ place, side }: Row): Tuple {
  const known = places.get(text(place));
  if (known !== undefined) return [known.region, known.side];
  return [text(place), text(side).replace(/^side\./, '')];
}

const ofView = (row: Row): Tuple => [
  text(row['statement']),
  ...placeOf(row),
  standing(row['status']),
  instant(row['seen']),
];
const ofFlat = (row: FlatRow): Tuple => [
  `${row.exam}|${row.statement}`,
  row.region,
  row.side,
  standing(row.status),
  instant(row.seen || row.date),
];

interface Comparison {
  readonly of: (row: FlatRow) => boolean;
  readonly stated: (row: FlatRow) => Tuple;
  readonly viewed: (row: Row) => Tuple;
}

const texts =
  (...names: readonly string[]) =>
  (row: Row): Tuple =>
    names.map((name) => text(row[name]));

/** What each view must say, from the rows of the exams alone. */
const comparisons: Readonly<Record<string, Comparison>> = {
  findings: {
    of: ({ kind }) => kind === 'finding',
    stated: ({ code, state, answer, tracking }) => [
      code,
      `presence.${state === 'suspected' ? state : answer}`,
      tracking,
    ],
    viewed: texts('code', 'presence', 'tracking'),
  },
  'region-states': {
    of: ({ kind }) => kind === 'region-state',
    stated: ({ answer, reason }) => [`state.${answer}`, reason],
    viewed: texts('state', 'reason'),
  },
  sensations: {
    of: ({ kind }) => kind === 'sensation',
    stated: ({ code, part, answer, reason }) => [code, part, answer, reason],
    viewed: texts('code', 'modality', 'result', 'reason'),
  },
  tests: {
    of: ({ kind }) => kind === 'movement' || kind === 'function-test',
    stated: ({ code, answer, reason }) => [code, answer, reason],
    viewed: texts('code', 'result', 'reason'),
  },
  measurements: {
    of: ({ kind }) => kind === 'measurement',
    stated: ({ code, value, comparator, unit, reason }) => [
      code,
      figure(value),
      comparator,
      unit,
      reason,
    ],
    viewed: (row) => [
      text(row['code']),
      figure(row['value']),
      ...texts('comparator', 'unit', 'reason')(row),
    ],
  },
  symptoms: {
    of: ({ kind }) => kind === 'symptom',
    stated: ({ code, answer }) => [code, `answer.${answer}`],
    viewed: texts('code', 'answer'),
  },
  coverage: {
    of: ({ reason }) => reason !== '',
    stated: ({ reason }) => [reason],
    viewed: texts('reason'),
  },
};

const sorted = (tuples: readonly Tuple[]): string[] =>
  tuples.map((tuple) => JSON.stringify(tuple)).sort();

const engines = [
  ['fhir4ds', viewsByDuckDb],
  ['medplum', viewsByMedplum],
] as const;

describe.each(engines)('%s', (_, start) => {
  describe.each(['R4', 'R5'] as const)('in %s', (fhirVersion) => {
    const rows = new Map<string, readonly Row[]>();
    const of = (view: string): readonly Row[] => rows.get(view) ?? [];

    beforeAll(async () => {
      const here = join(made, fhirVersion);
      mkdirSync(here, { recursive: true });
      const { lines } = toNdjson(exams, { ...clinic, fhirVersion });
      for (const [type, list] of lines) {
        writeFileSync(join(here, `${type}.ndjson`), `${list.join('\n')}\n`);
      }
      const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
      const requests = files.map((file) => {
        const view = JSON.parse(readFileSync(join(folder, file), 'utf8'));
        return { id: file.slice(0, -5), view, file: join(here, `${view.resource}.ndjson`) };
      });
      const answers = await ask<{ id: string; rows: Row[] }>(await start(), requests);
      for (const answer of answers) rows.set(answer.id, answer.rows);
      expect([...rows.keys()]).toEqual(files.map((file) => file.slice(0, -5)));
    });

    it.each(Object.entries(comparisons))('%s has the rows of the exams', (view, comparison) => {
      const stated = flat
        .filter(comparison.of)
        .map((row) => [...ofFlat(row), ...comparison.stated(row)]);
      const viewed = of(view).map((row) => [...ofView(row), ...comparison.viewed(row)]);
      expect(sorted(viewed)).toEqual(sorted(stated));
      expect(stated.length).toBeGreaterThan(10);
      expect(of(view).every(({ patient }) => text(patient) !== '')).toBe(true);
    });

    it('methods has every method of every statement', () => {
      const stated = exams.flatMap(({ id, statements }) =>
        statements.flatMap((one) => {
          const methods = 'methods' in one ? (one.methods ?? []) : [];
          return methods.map((method) => [`${id}|${one.key}`, method]);
        }),
      );
      expect(sorted(of('methods').map(texts('statement', 'method')))).toEqual(sorted(stated));
      expect(stated.length).toBeGreaterThan(100);
    });

    it('prompts has every prompt and what became of it', () => {
      const stated = exams.flatMap(({ id, prompts = [] }) =>
        prompts.map(({ urgency, shown, ruleSet, version, answer }, at) => [
          `${id}|prompt|${at}`,
          `prompt.${urgency}`,
          instant(shown),
          ruleSet,
          version,
          answer === undefined ? '' : `prompt-answer.${answer.answer}`,
          instant(answer?.at),
        ]),
      );
      const viewed = of('prompts').map((row) => [
        ...texts('prompt', 'urgency')(row),
        instant(row['shown']),
        ...texts('rule_set', 'rule_version', 'answer')(row),
        instant(row['answered']),
      ]);
      expect(sorted(viewed)).toEqual(sorted(stated));
      expect(stated.length).toBeGreaterThan(0);
    });

    it('exams has every exam, and leads to each statement by its groups', () => {
      const stated = exams.map(({ id, status, performed }) => [
        id,
        standing(status),
        instant(performed.start),
      ]);
      const viewed = of('exams').map((row) => [
        text(row['exam']),
        standing(row['status']),
        instant(row['performed']),
      ]);
      expect(sorted(viewed)).toEqual(sorted(stated));

      const examOf = new Map(of('exam-groups').map((row) => [row['group_id'], row['exam']]));
      const groupOf = new Map(of('group-members').map((row) => [row['id'], row['group_id']]));
      for (const view of Object.keys(comparisons)) {
        for (const { id = null, statement } of of(view)) {
          const exam = text(examOf.get(groupOf.get(id) ?? null));
          expect(statusOf.has(exam), text(statement)).toBe(true);
          expect(text(statement).startsWith(`${exam}|`), text(statement)).toBe(true);
        }
      }
    });
  });
});
