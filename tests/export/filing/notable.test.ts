import { describe, expect, it } from 'vitest';
import { type Detailed, withDetail } from '../../../src/export/detail.ts';
import type { Exam, Statement } from '../../../src/index.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { emptyExam } from '../../report/empty-exam.ts';

const base = emptyExam('full');

function notable(...statements: object[]): Detailed {
  const exam = { ...base, statements: statements.map((one, at) => ({ key: `s${at}`, ...one })) };
  return withDetail(exam as unknown as Exam, 'notable', builtInCatalogue); // as written below
}

const cheek = { region: 'cheek-malar', side: 'left' };
const methods = ['inspection'];
const reason = { code: 'time' };
const finding = { kind: 'finding', finding: 'naevus', ...cheek };
const normal = { kind: 'region-state', state: 'normal', methods, ...cheek };
const felt = (...results: string[]) => ({
  kind: 'sensation',
  point: 'v2',
  side: 'left',
  results: results.map((result, at) => ({
    modality: at === 0 ? 'light-touch' : 'pinprick',
    result,
    ...(result === 'not-tested' && { reason }),
  })),
});
const compared = { kind: 'sensation-comparison', point: 'v2', modality: 'light-touch' };
const moved = { kind: 'movement', test: 'frontalis', side: 'left' };
const whisper = { kind: 'function-test', test: 'cn8-whisper', side: 'left' };
const symptom = { kind: 'symptom', symptom: 'sym-ear.tinnitus' };
/** An appearance that is usual, and on no list of pertinent negatives. */
const usual = { kind: 'finding', finding: 'tm-colour.pearl-grey', region: 'tm', side: 'left' };
const carried = { exam: 'row-2', statement: 'x', at: '2024-05-05' };

/** What leaves in a notable copy, by what the comment of `Detail` promises. */
const merelyNormal: Readonly<Record<string, object>> = {
  'a sign that is not there': { ...finding, presence: 'absent' },
  'a region that is normal': normal,
  'a point that feels as usual': felt('normal', 'normal'),
  'sides that feel alike': { ...compared, result: 'equal' },
  'a movement that is normal': { ...moved, grade: 'normal' },
  'a test that was passed': { ...whisper, result: 'pass' },
  'a complaint denied': { ...symptom, answer: 'no' },
  'what was taken over and confirmed': { ...normal, carried: { ...carried, confirmed: true } },
};
const kept: Readonly<Record<string, object>> = {
  'a sign': { ...finding, presence: 'present' },
  'a sign suspected': { ...finding, presence: 'present', certainty: 'suspected' },
  'a sign not decided': { ...finding, presence: 'indeterminate' },
  'a pertinent sign that is not there': {
    ...finding,
    finding: 'suspicious-pigmented-lesion',
    presence: 'absent',
  },
  'a usual appearance that is not there': { ...usual, presence: 'absent' },
  'a region that is abnormal': { ...normal, state: 'abnormal' },
  'a region seen in part': { ...normal, state: 'partial', limit: reason },
  'a region that was not examined': {
    kind: 'region-state',
    state: 'not-examined',
    reason,
    ...cheek,
  },
  'a point that feels less': felt('reduced'),
  'a point of which one result deviates': felt('normal', 'absent'),
  'a point that was not tested': felt('not-tested'),
  'a point that was tested in part': felt('normal', 'not-tested'),
  'a side that feels less': { ...compared, result: 'right-less' },
  'sides that were not compared': { ...compared, result: 'not-compared', reason },
  'a movement that is weak': { ...moved, grade: 'trace' },
  'a test that was failed': { ...whisper, result: 'fail' },
  'a complaint': { ...symptom, answer: 'yes' },
  'a complaint that was not asked for': { ...symptom, answer: 'not-asked' },
  'a figure': { kind: 'measurement', measure: 'pfh', ...cheek, value: '9', unit: 'mm' },
  'a note': { kind: 'note', text: 'Tanned.' },
  'what has a note': { ...normal, note: 'After shaving' },
  'what has a code of the caller': {
    ...normal,
    codings: [{ system: 'https://clinic.example/codes', code: 'N' }],
  },
  'what was taken over and not looked at': { ...normal, carried: { ...carried, confirmed: false } },
  'a region that is normal but for a part': {
    ...normal,
    except: [{ region: 'lid-lower', side: 'left' }],
  },
};

describe('a notable copy', () => {
  it.each(Object.keys(merelyNormal))('leaves out %s', (name) => {
    expect(notable(merelyNormal[name] ?? {})).toMatchObject({
      exam: { statements: [] },
      leftOut: 1,
    });
  });

  it.each(Object.keys(kept))('keeps %s', (name) => {
    const { exam, leftOut } = notable(kept[name] ?? {});
    expect([exam.statements.length, leftOut]).toEqual([1, 0]);
  });

  it('keeps what is named by what it keeps, and by conclusion, history, prompts and judgements', () => {
    const absent = { ...finding, presence: 'absent' };
    const figure = { kind: 'measurement', measure: 'lesion-max', ...cheek, value: '4', unit: 'mm' };
    const { exam } = notable(absent, normal, { ...figure, about: 's0' });
    expect(exam.statements.map(({ key }) => key)).toEqual(['s0', 's2']);
    for (const by of ['conclusion', 'history', 'prompts', 'judgements']) {
      const named = {
        ...base,
        statements: [{ key: 'a', ...absent } as Statement, { key: 'b', ...normal } as Statement],
        [by]: [{ basedOn: ['a'] }],
      };
      const found = withDetail(named as Exam, 'notable', builtInCatalogue);
      expect([by, found.exam.statements.map(({ key }) => key)]).toEqual([by, ['a']]);
    }
  });

  it('is the whole exam where everything is asked for, and no statement in the report alone', () => {
    const exam: Exam = { ...base, statements: [{ key: 'a', ...normal } as Statement] };
    expect(withDetail(exam, 'everything', builtInCatalogue)).toEqual({ exam, leftOut: 0 });
    const alone = withDetail(exam, 'report', builtInCatalogue);
    expect(alone).toEqual({ exam: { ...exam, statements: [] }, leftOut: 1 });
  });
});
