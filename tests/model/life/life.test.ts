import { describe, expect, it } from 'vitest';
import {
  amendExam,
  appendExam,
  correctExam,
  type StepAction,
  signExam,
  stepsFrom,
} from '../../../src/model/life/steps.ts';
import type { RecordStatus } from '../../../src/model/record-event.ts';
import { checkExport } from './export.ts';
import { actions, draft, sequences, take } from './sequences.ts';

/**
 * What may follow what, by the definitions of the published states: amended, corrected and appended
 * are "subsequent to being final", entered-in-error is withdrawn after a release, cancelled was not
 * completed (https://hl7.org/fhir/R4/codesystem-diagnostic-report-status.html). That a preliminary or
 * cancelled record can be withdrawn too, and that a signature can be added, is common practice.
 */
const afterFinal: Partial<Record<StepAction, RecordStatus>> = {
  amend: 'amended',
  correct: 'corrected',
  append: 'appended',
  retract: 'entered-in-error',
};
const legal: Readonly<Record<RecordStatus, Partial<Record<StepAction, RecordStatus>>>> = {
  draft: { release: 'preliminary', sign: 'final', cancel: 'cancelled' },
  preliminary: {
    release: 'preliminary',
    sign: 'final',
    cancel: 'cancelled',
    retract: 'entered-in-error',
  },
  final: { sign: 'final', ...afterFinal },
  amended: { sign: 'amended', ...afterFinal },
  corrected: { sign: 'corrected', ...afterFinal },
  appended: { sign: 'appended', ...afterFinal },
  cancelled: { retract: 'entered-in-error' },
  'entered-in-error': {},
};

/** Sequences of up to so many steps that the states allow, by the table above alone. */
function countLegal(status: RecordStatus, length: number): number {
  if (length === 0) return 0;
  const after = Object.values(legal[status]);
  return after.reduce((sum, next) => sum + 1 + countLegal(next, length - 1), 0);
}

describe('every sequence of up to six steps', () => {
  it('follows the published states; what they do not allow is an issue', () => {
    const seen = { legal: 0, illegal: 0 };
    for (const { before, action, outcome } of sequences(draft, 6)) {
      const expected = legal[before.status][action];
      expect(outcome.value?.status, `${action} after ${before.status}`).toBe(expected);
      if (expected !== undefined) seen.legal += 1;
      else {
        seen.illegal += 1;
        expect(outcome.issues.map(({ code, path }) => [code, path])).toEqual([
          ['illegal-step', ['status']],
        ]);
      }
    }
    // By hand for two steps: 3, and after release, signature and cancellation 4, 5 and 1.
    expect(countLegal('draft', 2)).toBe(3 + 4 + 5 + 1);
    expect(seen.legal).toBe(countLegal('draft', 6));
    // Each legal state before the last step was tried with every step.
    expect(seen.legal + seen.illegal).toBe(actions.length * (1 + countLegal('draft', 5)));
  });

  it('exports a valid bundle with every step in its order, and comes back equal', () => {
    // Up to four steps here; the slow suite goes to six.
    for (const { outcome } of sequences(draft, 4)) {
      if (outcome.value !== undefined) checkExport(outcome.value);
    }
  });
});

describe('a step', () => {
  const signed = take(draft, 'sign').value ?? draft;

  it('keeps the exam that it was given', () => {
    const before = JSON.stringify(signed);
    for (const action of actions) take(signed, action);
    expect(JSON.stringify(signed)).toBe(before);
  });

  it('names who, when, why, the version and what changed', () => {
    const { value } = amendExam(signed, {
      by: { key: 'examiner-2', name: { family: 'Kelsund' } },
      at: '2024-03-02T08:00:00Z',
      reason: 'The worker called: the lump was there before',
      changes: {
        statements: [
          { key: 'words', kind: 'note', text: 'Seen on the quay, with his mate' },
          { key: 'more', kind: 'note', text: 'A lump for years' },
        ],
      },
    });
    expect(value?.status).toBe('amended');
    expect(value?.recorded).toBe('2024-03-02T08:00:00Z');
    expect(value?.examiners.map(({ key }) => key)).toEqual(['examiner-1', 'examiner-2']);
    expect(value?.history?.at(-1)).toEqual({
      action: 'amend',
      by: 'examiner-2',
      at: '2024-03-02T08:00:00Z',
      reason: 'The worker called: the lump was there before',
      version: 2,
      changed: ['words', 'more'],
    });
    expect(value?.statements.map(({ key }) => key)).toEqual(['sign', 'words', 'more']);
  });

  it('lists what a state allows', () => {
    for (const [status, steps] of Object.entries(legal)) {
      // A key of the table of states.
      expect(new Set(stepsFrom(status as RecordStatus))).toEqual(new Set(Object.keys(steps)));
    }
  });

  const step = { by: 'examiner-1', at: '2024-03-02T08:00:00Z', reason: 'Looked at again' };
  const words = { key: 'words', kind: 'note', text: 'Seen on the quay' } as const;
  const conclusion = { text: 'Well', concern: 'none' } as const;

  it.each([
    [
      'that changes nothing',
      () => amendExam(signed, { ...step, changes: { statements: [words] } }),
      'nothing-changed',
      ['statements'],
    ],
    [
      'that changes nothing at all',
      () => correctExam(signed, { ...step, changes: {} }),
      'nothing-changed',
      ['statements'],
    ],
    [
      'that adds over what is there',
      () => appendExam(signed, { ...step, changes: { statements: [words] } }),
      'duplicate-key',
      ['statements', 0, 'key'],
    ],
    [
      'that adds a second conclusion',
      () => appendExam({ ...signed, conclusion }, { ...step, changes: { conclusion } }),
      'contradiction',
      ['conclusion'],
    ],
    [
      'by someone else under a key that is taken',
      () => signExam(signed, { ...step, by: { key: 'examiner-1', name: { family: 'Kelsund' } } }),
      'duplicate-key',
      ['examiners'],
    ],
    [
      'by nobody of the exam',
      () => signExam(signed, { ...step, by: 'examiner-9' }),
      'unresolved-key',
      ['history', 1, 'by'],
    ],
    [
      'before the one it follows',
      () => signExam(signed, { ...step, at: '2024-03-01T09:00:00Z' }),
      'reversed-dates',
      ['history', 1, 'at'],
    ],
    [
      'at no time that exists',
      () => signExam(signed, { ...step, at: '2024-02-30T09:00:00Z' }),
      'impossible-date',
      ['recorded'],
    ],
  ])('%s is an issue', (_, taken, code, path) => {
    const { value, issues } = taken();
    expect(value).toBeUndefined();
    expect(issues.map((found) => [found.code, found.path])).toContainEqual([code, path]);
  });
});
