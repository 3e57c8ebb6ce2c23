import type { Bundle } from 'fhir/r4.js';
import { checkExam, type Exam, hasErrors, toBundleOrThrow, toJson } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/index.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { clinic } from '../clinic.ts';

export interface Sent {
  readonly exam: Exam;
  readonly text: string;
  /** `Observation/ID`, `Patient?identifier=…` and the like: every resource that a FHIR server should hold of it. */
  readonly resources: readonly string[];
}

/** Seeded exams in which the service finds no error, under ids of their own. */
export function examsToSend(seed: number, count: number): Sent[] {
  const found: Sent[] = [];
  for (let at = seed; found.length < count; at++) {
    const exam = sampleExam(at, { size: 'small' });
    const sound = !hasErrors(checkExam(exam).issues) && validateBundle(toBundleOrThrow(exam)).valid;
    if (sound) found.push(toSend(exam));
  }
  return found;
}

export function toSend(exam: Exam): Sent {
  const options = { ...clinic, bundleType: 'transaction' } as const;
  const bundle = toBundleOrThrow(exam, options) as Bundle; // no version was asked for, so it is R4
  const entries = bundle.entry ?? [];
  return {
    exam,
    text: toJson(exam),
    resources: entries.map(({ request }) =>
      request?.ifNoneExist === undefined
        ? (request?.url ?? '')
        : `${request.url}?${request.ifNoneExist}`,
    ),
  };
}
