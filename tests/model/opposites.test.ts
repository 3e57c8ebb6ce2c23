import { describe, expect, it } from 'vitest';
import type { Statement } from '../../src/index.ts';
import {
  absent,
  type Exam,
  finishExam,
  finishExamOrThrow,
  fromBundle,
  measured,
  present,
  startExam,
  toBundle,
  toBundleOrThrow,
} from '../../src/index.ts';
import { parseExam } from '../../src/model/parse-exam.ts';
import { clinic } from '../clinic.ts';
import { begin } from './begin.ts';

const draft = startExam(begin);
const temple = { region: 'temple', side: 'right' } as const;
const lid = { region: 'lid-upper', side: 'right' } as const;
const opposed = absent(present(draft, 'vesicles', temple), 'vesicles', temple);
const absurd = measured(draft, 'mrd1', lid, '400', 'mm');

function toldOf(outcome: { value?: unknown; issues: readonly object[] }) {
  return {
    done: outcome.value !== undefined,
    issues: outcome.issues.map((found) => {
      const { code, severity, statement } = found as Record<string, unknown>;
      return [code, severity, statement].join(' ');
    }),
  };
}

const keys = ['finding/vesicles/temple/right', 'finding/vesicles/temple/right.2'];
const bothRefused = { done: false, issues: keys.map((key) => `contradiction error ${key}`) };
const figureRefused = {
  done: false,
  issues: ['implausible-figure error measurement/mrd1/lid-upper/right'],
};

describe('opposites and impossible figures stop an exam', () => {
  it('in the builder', () => {
    expect(toldOf(finishExam(opposed, 'final'))).toEqual(bothRefused);
    expect(toldOf(finishExam(absurd, 'final'))).toEqual(figureRefused);
  });

  it('in the export of plain data, of any type and version', () => {
    for (const bundleType of ['collection', 'document', 'transaction'] as const) {
      for (const fhirVersion of ['R4', 'R4B', 'R5'] as const) {
        const options = {
          bundleType,
          fhirVersion,
          ...clinic,
        };
        const [one, other] = [opposed, absurd].map(
          ({ exam }): Exam => JSON.parse(JSON.stringify({ ...exam, status: 'final' })),
        );
        expect(toldOf(toBundle(one as Exam, options))).toEqual(bothRefused);
        expect(toldOf(toBundle(other as Exam, options))).toEqual(figureRefused);
      }
    }
  });

  it('in a bundle that is read: told, and the words kept as notes', () => {
    const sound = finishExamOrThrow(
      absent(absent(measured(draft, 'mrd1', lid, '4', 'mm'), 'vesicles', temple), 'vesicles', {
        ...temple,
        place: 'hairline',
      }),
      'final',
    );
    const text = JSON.stringify(toBundleOrThrow(sound))
      .replace('"valueQuantity":{"value":4,', '"valueQuantity":{"value":400,')
      .replace('"code":"2667000","display":"Absent"', '"code":"52101004","display":"Present"')
      .replace(/"code":"presence.absent","display":"([^"]*)"/, '"code":"presence.present"');
    const { value, issues } = fromBundle(JSON.parse(text));
    const told = issues.filter(({ severity }) => severity === 'error').map(({ code }) => code);
    expect(new Set(told)).toContain('implausible-figure');
    expect(value?.statements.map(({ kind }) => kind)).toContain('note');
    expect(value?.statements).toHaveLength(3);
    expect(JSON.stringify(value)).toContain('400');
  });
});

describe('long lists', () => {
  it('are looked through in linear time, however alike the statements are', () => {
    const statements = Array.from(
      { length: 20_000 },
      (_, at): Statement => ({
        kind: 'finding',
        key: `f${at}`,
        finding: 'papule',
        presence: at % 2 === 0 ? 'present' : 'absent',
        region: 'temple',
        side: 'right',
        tracking: `lesion-${at}`,
        ...(at % 3 === 0 && { place: `spot ${at}` }),
      }),
    );
    const exam = { ...draft.exam, status: 'final', statements };
    expect(parseExam(exam).issues).toEqual([]);
  });
});
