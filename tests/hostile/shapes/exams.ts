import { readFileSync } from 'node:fs';
import { checkExam } from '../../../src/checks/check-exam.ts';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { toNdjson } from '../../../src/export/to-ndjson.ts';
import { coverExam, outstanding } from '../../../src/index.ts';
import { noted } from '../../../src/kinds/registries/builders.ts';
import { startExam } from '../../../src/model/builder/draft.ts';
import { finishExam } from '../../../src/model/builder/finish-exam.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { amendExam, appendExam } from '../../../src/model/life/steps.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { toHtml } from '../../../src/report/to-html.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { clinic } from '../../clinic.ts';
import { characters, many, nested, type Shape } from './shape.ts';

const yearly: Exam = JSON.parse(
  readFileSync(new URL('../../../examples/exams/yearly-check.json', import.meta.url), 'utf8'),
);

const { conclusion: _, instruments: _instruments, history: _history, ...bare } = yearly;

/** An exam with other parts, of whatever form. */
function examWith(parts: object): Exam {
  return { ...bare, statements: [], ...parts } as Exam; // damaged on purpose
}

const note = (at: number) => ({
  kind: 'note',
  key: `n${at}`,
  text: 'Harbour wind.',
  region: 'chin',
});
const finding = (at: number) => ({
  kind: 'finding',
  key: `f${at}`,
  finding: 'naevus',
  presence: 'present',
  region: 'cheek-malar',
  side: at % 2 === 0 ? 'right' : 'left',
  methods: ['inspection'],
});
const measurement = (at: number) => ({
  kind: 'measurement',
  key: `m${at}`,
  measure: 'pfh',
  side: 'right',
  region: 'lid-upper',
  methods: ['measurement'],
  value: String(1 + (at % 9)),
  unit: 'mm',
});

/** Exams by shape: some are accepted, some are wrong at every place. */
const exams: Readonly<Record<string, (bytes: number) => unknown>> = {
  'many notes': (bytes) => examWith({ statements: many(bytes, note) }),
  'many findings of one place': (bytes) => examWith({ statements: many(bytes, finding) }),
  'many values of one measure': (bytes) => examWith({ statements: many(bytes, measurement) }),
  'many unknown codes': (bytes) =>
    examWith({ statements: many(bytes, (at) => ({ ...finding(at), finding: `naevvus-${at}` })) }),
  'many unknown names': (bytes) =>
    examWith({ statements: many(bytes, (at) => ({ ...note(at), [`tekst${at}`]: '' })) }),
  'one long unknown code': (bytes) =>
    examWith({ statements: [{ ...finding(0), finding: 'n'.repeat(bytes) }] }),
  'one key for all': (bytes) =>
    examWith({ statements: many(bytes, () => ({ ...note(0), key: 'same' })) }),
  'each refers to the next': (bytes) =>
    examWith({ statements: many(bytes, (at) => ({ ...finding(at), focus: `f${at + 1}` })) }),
  'wide statement': (bytes) =>
    examWith({
      statements: [Object.fromEntries(many(bytes, (at): [string, number] => [`name${at}`, at]))],
    }),
  'nulls for statements': (bytes) => examWith({ statements: many(bytes, () => null) }),
  'many codings': (bytes) =>
    examWith({
      statements: [
        {
          ...finding(0),
          codings: many(bytes, (at) => ({ system: 'https://quay.example/codes', code: `c${at}` })),
        },
      ],
    }),
  'many examiners': (bytes) =>
    examWith({ examiners: many(bytes, (at) => ({ key: `e${at}`, role: 'nurse' })) }),
  'many steps of history': (bytes) =>
    examWith({
      history: many(bytes, (at) => ({
        action: 'sign',
        by: 'nurse',
        at: '2025-09-09T18:00:00+02:00',
        version: at + 1,
      })),
    }),
  'unsafe names': (bytes) =>
    examWith({ statements: many(bytes, () => JSON.parse('{"__proto__":1,"constructor":2}')) }),
  'deep list': (bytes) => examWith({ statements: nested(bytes) }),
};

const calls: Readonly<Record<string, (exam: Exam) => unknown>> = {
  parseExam,
  toBundle,
  'toBundle document R5': (exam) =>
    toBundle(exam, { fhirVersion: 'R5', bundleType: 'document', allowDraft: true }),
  toNdjson: (exam) => toNdjson(exam, clinic),
  checkExam: (exam) => checkExam(exam, { ruleSets: ['horner-signs'] }),
  'checkExam with prior': (exam) => checkExam(exam, { prior: exam, samePatient: 'assumed' }),
};

/** These take exams that `parseExam` has accepted. */
const callsOnSound: Readonly<Record<string, (exam: Exam) => unknown>> = {
  toHtml,
  outstanding: (exam) => outstanding(exam),
  coverExam: (exam) => {
    const protocol = builtInCatalogue.protocols.get('full');
    return protocol && coverExam(exam, protocol, builtInCatalogue);
  },
  amendExam: (exam) =>
    amendExam({ ...exam, status: 'final' }, { ...step, changes: { statements: exam.statements } }),
  appendExam: (exam) =>
    appendExam({ ...exam, statements: [] }, { ...step, changes: { statements: exam.statements } }),
};

const step = { by: 'nurse', at: '2026-01-01T00:00:00Z', reason: 'Read the wrong line' };

const texts: readonly Shape[] = characters.flatMap(([name, letters]) => [
  {
    entry: 'parseExam',
    name: `text of ${name}`,
    prepare: (bytes) => {
      const exam = examWith({ statements: [{ ...note(0), text: letters.repeat(bytes / 2) }] });
      return () => parseExam(exam);
    },
  },
  {
    entry: 'parseExam',
    name: `code of ${name}`,
    prepare: (bytes) => {
      const exam = examWith({ id: letters.repeat(bytes / 2), recorded: letters.repeat(bytes / 2) });
      return () => parseExam(exam);
    },
  },
  {
    entry: 'toHtml',
    name: `text of ${name}`,
    prepare: (bytes) => {
      const exam = examWith({ statements: [{ ...note(0), text: letters.repeat(bytes / 2) }] });
      return () => toHtml(exam);
    },
  },
  {
    entry: 'toBundle',
    name: `text of ${name}`,
    prepare: (bytes) => {
      const exam = examWith({ statements: [{ ...note(0), text: letters.repeat(bytes / 2) }] });
      return () => toBundle(exam);
    },
  },
]);

function withShapes(entries: typeof calls, made: typeof exams): Shape[] {
  return Object.entries(entries).flatMap(([entry, call]) =>
    Object.entries(made).map(
      ([name, make]): Shape => ({
        entry,
        name,
        prepare: (bytes) => {
          const exam = make(bytes) as Exam; // wrong on purpose where it is
          return () => call(exam);
        },
      }),
    ),
  );
}

const sound = ['many notes', 'many findings of one place', 'many values of one measure'];
/** Shapes that `parseExam` accepts. */
export const soundExams = Object.fromEntries(
  Object.entries(exams).filter(([name]) => sound.includes(name)),
);

const builder: Shape = {
  entry: 'noted',
  name: 'thousands of calls',
  prepare: (bytes) => () => {
    let draft = startExam(bare);
    for (let at = 0; at < bytes / 80; at++) draft = noted(draft, 'Harbour wind.');
    return finishExam(draft, 'draft');
  },
};

export const examShapes: readonly Shape[] = [
  ...withShapes(calls, exams),
  ...withShapes(callsOnSound, soundExams),
  ...texts,
  builder,
];
