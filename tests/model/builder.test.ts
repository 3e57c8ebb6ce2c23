import { describe, expect, it } from 'vitest';
import {
  abnormal,
  absent,
  added,
  comparedSides,
  conclude,
  type ExamDraft,
  finishExam,
  finishExamOrThrow,
  IssueError,
  indeterminate,
  measured,
  moved,
  normal,
  notApplicable,
  notExamined,
  noted,
  partlyExamined,
  pictured,
  present,
  type Statement,
  scored,
  sensation,
  startExam,
  state,
  symptom,
  tested,
  unusable,
} from '../../src/index.ts';
import { begin } from './begin.ts';

const draft = startExam(begin);
const temple = { region: 'temple', side: 'right', methods: ['inspection'] } as const;
const image = {
  region: 'temple',
  side: 'right',
  title: 'Temple',
  contentType: 'image/png',
  url: 'https://clinic.example/1.png',
  consent: 'given',
} as const;

/** The statements that a call adds to an empty draft. */
function statementsOf(call: (draft: ExamDraft) => ExamDraft): readonly Statement[] {
  return call(draft).exam.statements;
}

describe('each function states one thing', () => {
  const calls: readonly (readonly [string, (draft: ExamDraft) => ExamDraft, object])[] = [
    [
      'present',
      (d) => present(d, 'naevus', temple, { certainty: 'suspected', note: 'x', tracking: 'n-1' }),
      {
        kind: 'finding',
        finding: 'naevus',
        presence: 'present',
        ...temple,
        certainty: 'suspected',
        note: 'x',
        tracking: 'n-1',
        key: 'finding/naevus/temple/right',
      },
    ],
    [
      'present, with attributes',
      (d) =>
        present(d, 'naevus', temple, {
          attributes: { 'lesion-symptom': ['itch', 'change'], 'lesion-tender': false },
        }),
      {
        kind: 'finding',
        finding: 'naevus',
        presence: 'present',
        ...temple,
        attributes: [
          { attribute: 'lesion-symptom', value: 'itch' },
          { attribute: 'lesion-symptom', value: 'change' },
          { attribute: 'lesion-tender', value: false },
        ],
        key: 'finding/naevus/temple/right',
      },
    ],
    [
      'absent',
      (d) => absent(d, 'naevus', temple, { key: 'k' }),
      { kind: 'finding', finding: 'naevus', presence: 'absent', ...temple, key: 'k' },
    ],
    [
      'indeterminate',
      (d) => indeterminate(d, 'naevus', temple, { key: 'k' }),
      { kind: 'finding', finding: 'naevus', presence: 'indeterminate', ...temple, key: 'k' },
    ],
    [
      'normal',
      (d) => normal(d, [temple]),
      { kind: 'region-state', state: 'normal', ...temple, key: 'region-state/temple/right' },
    ],
    [
      'abnormal',
      (d) => abnormal(d, temple, { key: 'k' }),
      { kind: 'region-state', state: 'abnormal', ...temple, key: 'k' },
    ],
    [
      'partlyExamined',
      (d) => partlyExamined(d, temple, { code: 'unable-hair', text: 'A curl' }, { key: 'k' }),
      {
        kind: 'region-state',
        state: 'partial',
        limit: { code: 'unable-hair', text: 'A curl' },
        ...temple,
        key: 'k',
      },
    ],
    [
      'notExamined',
      (d) => notExamined(d, { region: 'neck' }, 'declined', { key: 'k' }),
      {
        kind: 'region-state',
        state: 'not-examined',
        reason: { code: 'declined' },
        region: 'neck',
        key: 'k',
      },
    ],
    [
      'notApplicable',
      (d) => notApplicable(d, { region: 'globe', side: 'left' }, 'structure-absent', { key: 'k' }),
      {
        kind: 'region-state',
        state: 'not-applicable',
        reason: { code: 'structure-absent' },
        region: 'globe',
        side: 'left',
        key: 'k',
      },
    ],
    [
      'sensation',
      (d) =>
        sensation(
          d,
          'v1',
          'right',
          { 'light-touch': 'normal', pinprick: { result: 'not-tested', reason: 'declined' } },
          { eyesClosed: true },
        ),
      {
        kind: 'sensation',
        point: 'v1',
        side: 'right',
        results: [
          { modality: 'light-touch', result: 'normal' },
          { modality: 'pinprick', result: 'not-tested', reason: { code: 'declined' } },
        ],
        eyesClosed: true,
        key: 'sensation/v1/right',
      },
    ],
    [
      'comparedSides',
      (d) => comparedSides(d, 'v1', 'pinprick', 'not-compared', { reason: 'time' }),
      {
        kind: 'sensation-comparison',
        point: 'v1',
        modality: 'pinprick',
        result: 'not-compared',
        reason: { code: 'time' },
        key: 'sensation-comparison/v1/pinprick',
      },
    ],
    [
      'moved',
      (d) => moved(d, 'zygomaticus', 'trace', { side: 'left', synkinesis: true }),
      {
        kind: 'movement',
        test: 'zygomaticus',
        grade: 'trace',
        side: 'left',
        synkinesis: true,
        key: 'movement/zygomaticus/left',
      },
    ],
    [
      'tested',
      (d) => tested(d, 'weber', 'not-tested', { reason: 'equipment' }),
      {
        kind: 'function-test',
        test: 'weber',
        result: 'not-tested',
        reason: { code: 'equipment' },
        key: 'function-test/weber',
      },
    ],
    [
      'measured',
      (d) =>
        measured(d, 'mrd1', { region: 'lid-upper', side: 'left' }, '4.0', 'mm', {
          readings: ['4.0', '4.0'],
          convention: 'mean',
        }),
      {
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '4.0',
        unit: 'mm',
        readings: ['4.0', '4.0'],
        convention: 'mean',
        key: 'measurement/mrd1/lid-upper/left',
      },
    ],
    [
      'unusable',
      (d) => unusable(d, 'icd', { region: 'eyes' }, 'mm', 'reading-unusable'),
      {
        kind: 'measurement',
        measure: 'icd',
        region: 'eyes',
        unit: 'mm',
        unusable: { code: 'reading-unusable' },
        key: 'measurement/icd/eyes',
      },
    ],
    [
      'scored',
      (d) => scored(d, 'hb', '1985', 'hb-2', { side: 'left' }),
      {
        kind: 'scale-score',
        scale: 'hb',
        version: '1985',
        score: 'hb-2',
        side: 'left',
        key: 'scale-score/hb/left',
      },
    ],
    [
      'symptom',
      (d) => symptom(d, 'sym-ear.pain', 'not-asked'),
      {
        kind: 'symptom',
        symptom: 'sym-ear.pain',
        answer: 'not-asked',
        key: 'symptom/sym-ear.pain',
      },
    ],
    ['noted', (d) => noted(d, 'Tired.'), { kind: 'note', text: 'Tired.', key: 'note' }],
    ['pictured', (d) => pictured(d, image), { kind: 'image', ...image, key: 'image/temple/right' }],
  ];

  it.each(calls)('%s', (_, call, expected) => {
    expect(statementsOf(call)).toEqual([expected]);
    expect(finishExam(call(draft), 'final').issues).toEqual([]);
  });
});

describe('a draft', () => {
  it('is empty: nothing is normal, absent or done until it is said', () => {
    expect(draft.exam).toEqual({
      format: 'face-neck-exam/1',
      ...begin,
      status: 'draft',
      statements: [],
    });
  });

  it('is never changed', () => {
    const before = JSON.stringify(draft);
    noted(present(draft, 'naevus', temple), 'x');
    conclude(draft, { text: 'x', concern: 'none' });
    expect(JSON.stringify(draft)).toBe(before);
  });

  it('gives statements of the same keys of their own, in the order added', () => {
    let exam = noted(noted(noted(draft, 'a'), 'b'), 'c', { key: 'note.3' });
    exam = noted(exam, 'd');
    expect(exam.exam.statements.map(({ key }) => key)).toEqual([
      'note',
      'note.2',
      'note.3',
      'note.4',
    ]);
  });

  it('keeps a key that was given, even twice, for finishExam to refuse', () => {
    const twice = noted(noted(draft, 'a', { key: 'k' }), 'b', { key: 'k' });
    expect(finishExam(twice, 'final').issues.map(({ code }) => code)).toEqual(['duplicate-key']);
  });

  it('takes a conclusion, and a later one in its place', () => {
    const first = conclude(draft, { text: 'a', concern: 'low' });
    expect(conclude(first, { text: 'b', concern: 'none' }).exam.conclusion?.text).toBe('b');
  });

  it('normal states each place that is listed, and no other', () => {
    const places = [temple, { ...temple, side: 'left' }] as const;
    expect(statementsOf((d) => normal(d, places)).map(({ key }) => key)).toEqual([
      'region-state/temple/right',
      'region-state/temple/left',
    ]);
    expect(statementsOf((d) => normal(d, []))).toEqual([]);
  });
});

describe('what the compiler cannot check gives an issue', () => {
  const codes = (made: ExamDraft): string[] =>
    finishExam(made, 'final').issues.map(({ code }) => code);

  it('codes of an adopter that no catalogue holds', () => {
    expect(codes(present(draft, added('frown-line'), { region: added('third-eye') }))).toEqual([
      'unknown-region',
      'unknown-code',
    ]);
  });

  it('a region of an adopter without its side', () => {
    // The brand hides from the compiler that the region is one of ours, and paired.
    expect(codes(present(draft, 'naevus', { region: added('temple') }))).toEqual(['missing-side']);
  });

  it('a text that is not a decimal', () => {
    const place = { region: 'lid-upper', side: 'left' } as const;
    expect(codes(measured(draft, 'mrd1', place, 'four', 'mm'))).toEqual(['invalid-value']);
  });

  it('a statement put together by hand', () => {
    expect(codes(state(draft, { kind: 'note', text: ' ' }))).toEqual(['invalid-value']);
  });

  it('the OrThrow form throws them', () => {
    const faulty = noted(draft, ' ');
    expect(() => finishExamOrThrow(faulty, 'final')).toThrow(IssueError);
    expect(finishExamOrThrow(draft, 'preliminary').status).toBe('preliminary');
  });
});
