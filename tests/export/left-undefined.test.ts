import { expect, test } from 'vitest';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import type { Exam } from '../../src/model/exam.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';

// In TypeScript a property that is undefined and one that is not there say the same, and JSON has no
// undefined: https://www.rfc-editor.org/rfc/rfc8259#section-3.

const exams = Array.from({ length: 9 }, (_, seed) =>
  sampleExam(seed + 1, { size: (['usual', 'edge', 'small'] as const)[seed % 3] ?? 'usual' }),
);

type Visit = (holder: Record<string, unknown>, place: string) => void;

/** Visits each object of an exam with its place: names of properties, kinds of statements. */
function walk(value: unknown, place: string, visit: Visit): void {
  if (Array.isArray(value)) {
    for (const item of value) walk(item, place, visit);
  } else if (typeof value === 'object' && value !== null) {
    const holder = value as Record<string, unknown>; // plain data
    const told = ['kind', 'state', 'status'].map((name) => holder[name]);
    const kind = [place, ...told.filter((word) => typeof word === 'string')].join(':');
    visit(holder, kind);
    for (const name of Object.keys(holder)) walk(holder[name], `${kind}.${name}`, visit);
  }
}

const known = new Map<string, Set<string>>();
for (const exam of exams) {
  walk(exam, '', (holder, place) => {
    const names = known.get(place) ?? new Set();
    known.set(place, names);
    for (const name of Object.keys(holder)) names.add(name);
  });
}

function withUndefined(exam: Exam): Exam {
  const copy = structuredClone(exam);
  walk(copy, '', (holder, place) => {
    for (const name of known.get(place) ?? []) holder[name] ??= undefined;
  });
  return copy;
}

test.each(exams.map((exam) => [exam.id, exam] as const))(
  '%s with every property undefined that it leaves out makes the same bundle',
  (_id, exam) => {
    for (const fhirVersion of ['R4', 'R5'] as const) {
      const options = { ...clinic, fhirVersion, allowDraft: true };
      const bundle = toBundleOrThrow(withUndefined(exam), options);
      expect(bundle).toStrictEqual(toBundleOrThrow(exam, options));
    }
  },
);
