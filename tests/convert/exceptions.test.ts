import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../src/convert/csv/index.ts';
import { checkExam, fromBundle, toBundleOrThrow } from '../../src/index.ts';

const base = JSON.parse(
  readFileSync(new URL('../cases/csv/mappings/wide.json', import.meta.url), 'utf8'),
);
const except = [{ region: 'thyroid-isthmus' }, { region: 'ln-iia', side: 'left' }];
const methods = ['palpation'];
const neck = { region: 'neck', methods, words: 'presence', except };

/** Fields for the whole neck that leave out what another field speaks of. */
const fields = {
  ...base.fields,
  lumps: { kind: 'finding', finding: 'node-palpable', ...neck },
  scars: { kind: 'finding', ...neck, words: { scar: 'scar' }, presence: 'absent' },
  swelling: {
    kind: 'finding',
    finding: 'scar',
    ...neck,
    normal: { words: ['NAD'], methods: ['inspection'] },
  },
  whole: { kind: 'region-state', ...neck, words: 'region' },
};

function converted(field: string, word: string) {
  const text = `exam_no,worker_no,exam_date,${field}\n1,V1234,03/02/2024,${word}\n`;
  const { exams } = fromCsv(text, { ...base, fields });
  return exams[0]?.exam;
}

describe('exceptions that a mapping gives', () => {
  it.each([
    ['lumps', '-ve', { presence: 'absent', except }],
    ['lumps', '+', { presence: 'present', except: undefined }],
    ['lumps', '?', { presence: 'indeterminate', except: undefined }],
    ['scars', 'scar', { presence: 'absent', except }],
    ['swelling', 'NAD', { state: 'normal', except }],
    ['whole', 'WNL', { state: 'normal', except }],
    ['whole', 'abn', { state: 'abnormal', except: undefined }],
  ])('stand in what is absent or normal alone: %s %s', (field, word, wanted) => {
    const exam = converted(field, word);
    const [statement] = exam?.statements ?? [];
    const { except: given, ...said } = { except: undefined, ...statement };
    expect({ ...said, except: given }).toMatchObject({ region: 'neck', ...wanted });
    if (exam === undefined) return expect.fail();
    expect(fromBundle(toBundleOrThrow(exam, { allowDraft: true })).value).toEqual(exam);
    expect(checkExam(exam).issues.filter(({ rule }) => rule === 'R51')).toEqual([]);
  });

  it.each([
    ['no place', [{ region: 'nowhere' }], 'unknown-region', 'region'],
    ['the place itself', [{ region: 'neck' }], 'unknown-region', 'region'],
    ['a place elsewhere', [{ region: 'forehead', side: 'left' }], 'unknown-region', 'region'],
    ['a place without its side', [{ region: 'ln-iia' }], 'missing-side', 'side'],
    [
      'a side that there is not',
      [{ region: 'ln-iia', side: 'midline' }],
      'impossible-side',
      'side',
    ],
  ])('are refused in a mapping: %s', (_, wrong, code, property) => {
    for (const kind of ['lumps', 'whole'] as const) {
      const field = { ...fields[kind], except: wrong };
      const { issues } = fromCsv('exam_no\n', { ...base, fields: { [kind]: field } });
      expect(issues.map((one) => [one.code, one.path.join('.')])).toContainEqual([
        code,
        `fields.${kind}.except.0.${property}`,
      ]);
    }
  });

  it('are missing where another field says that a part was not examined: told, and kept as text', () => {
    const reason = 'unable-dressing';
    const isthmus = {
      kind: 'region-state',
      region: 'thyroid-isthmus',
      words: { ND: { state: 'not-examined', reason } },
    };
    const { except: _, ...open } = fields.whole;
    const text = 'exam_no,worker_no,exam_date,whole,isthmus\n1,V1234,03/02/2024,WNL,ND\n';
    const made = (whole: object): ReturnType<typeof fromCsv> =>
      fromCsv(text, { ...base, fields: { ...fields, isthmus, whole } });
    expect(made(fields.whole).exams).toHaveLength(1);
    const [{ exam, issues } = expect.fail()] = made(open).exams;
    expect(exam.statements).toMatchObject([
      { kind: 'note', region: 'neck', text: expect.stringContaining('WNL') },
      { kind: 'region-state', region: 'thyroid-isthmus', state: 'not-examined' },
    ]);
    expect(issues.map(({ code, facts }) => [code, Object(facts).reason])).toContainEqual([
      'contradiction',
      'open-members',
    ]);
  });

  it('need the region of which they are exceptions', () => {
    const { region: _, ...open } = fields.lumps;
    const { issues } = fromCsv('exam_no\n', { ...base, fields: { lumps: open } });
    expect(issues.map(({ path }) => path.join('.'))).toContain('fields.lumps.except.0.region');
  });
});
