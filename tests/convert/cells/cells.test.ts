import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import type { ConvertResult } from '../../../src/convert/exams/convert-text.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { CsvSource } from '../../../src/convert/mapping/source.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { checkLedger } from '../syntax-cases.ts';

function mappingOf(
  parts: Pick<Mapping, 'cells' | 'pairs' | 'fields' | 'words' | 'layout'>,
  source: Omit<CsvSource, 'syntax'> = {},
): Mapping {
  return {
    format: 'face-neck-mapping/1',
    source: { syntax: 'csv', ...source },
    exam: {
      id: { prefix: 'c', from: ['no'] },
      status: { value: 'final' },
      subject: { identifiers: [{ from: 'pid', system: 'https://quay.example/mrn' }] },
      performed: { start: 'day' },
      recorded: { value: '2025-01-01T00:00:00Z' },
      examiner: { fixed: { name: 'Quay clinic' } },
      protocol: { id: 'full', version: '1.0.0' },
    },
    noValue: { '': 'not-stated' },
    units: { mm: 'mm' },
    ...parts,
  };
}

function convert(lines: readonly string[], mapping: Mapping): ConvertResult {
  const result = fromCsv(lines.join('\n'), mapping);
  expect(result.issues).toEqual([]);
  checkLedger(result);
  return result;
}

const mrd1 = { kind: 'measurement', measure: 'mrd1', unit: 'mm' } as const;
const bySide = mappingOf({
  cells: [
    {
      do: 'split-sides',
      from: 'MRD1',
      words: { right: ['R'], left: ['L'] },
      into: { right: 'MRD1 R', left: 'MRD1 L' },
    },
  ],
  fields: { 'MRD1 R': { ...mrd1, side: 'right' }, 'MRD1 L': { ...mrd1, side: 'left' } },
});

describe('operations on cells', () => {
  it('splits two sides, and the ledger counts the one cell', () => {
    const { exams, ledger } = convert(
      ['no,pid,day,MRD1', '1,H-1,2024-02-05,L 2.0 mm R 4.5 mm'],
      bySide,
    );
    expect(exams[0]?.exam.statements).toMatchObject([
      { measure: 'mrd1', side: 'left', value: '2.0' },
      { measure: 'mrd1', side: 'right', value: '4.5' },
    ]);
    expect(exams[0]?.ledger.at(-1)).toMatchObject({
      name: 'MRD1',
      fate: 'coded',
      operations: ['split-sides'],
    });
    expect(ledger.fields).toBe(4);
  });

  it('keeps a text that it does not fit whole, and says so', () => {
    const { exams } = convert(['no,pid,day,MRD1', '1,H-1,2024-02-05,4 or 2 mm'], bySide);
    expect(exams[0]?.exam.statements).toMatchObject([{ kind: 'note' }]);
    expect(JSON.stringify(exams[0]?.exam.statements)).toContain('4 or 2 mm');
    expect(exams[0]?.issues.map(({ code }) => code)).toContain('unknown-word');
  });

  it('splits a list, and takes each part by its word', () => {
    const mapping = mappingOf({
      cells: [{ do: 'split-list', from: 'skin', at: ',', into: 'sign' }],
      fields: {
        sign: {
          kind: 'finding',
          region: 'forehead',
          side: 'right',
          words: { scar: 'scar', naevus: 'naevus' },
          normal: { words: ['NAD', 'WNL'], methods: ['inspection'] },
        },
      },
    });
    const { exams } = convert(
      [
        'no,pid,day,skin',
        '1,H-1,2024-02-05,"scar, naevus"',
        '2,H-2,2024-02-05,NAD',
        '3,H-3,2024-02-05,nad',
      ],
      mapping,
    );
    expect(exams.map(({ exam }) => exam.statements)).toMatchObject([
      [
        { kind: 'finding', finding: 'scar', presence: 'present' },
        { kind: 'finding', finding: 'naevus', presence: 'present' },
      ],
      [{ kind: 'region-state', state: 'normal', region: 'forehead', methods: ['inspection'] }],
      // Not the word that the mapping lists.
      [{ kind: 'note' }],
    ]);
  });

  it('picks figures by a pattern, and looks codes up', () => {
    const mapping = mappingOf({
      cells: [
        { do: 'pick', from: 'lids', patterns: ['MRD1 R {r:number}, L {l:number} mm'] },
        { do: 'look-up', from: 'skin', table: { S1: 'scar' }, into: 'sign' },
      ],
      fields: {
        r: { ...mrd1, side: 'right' },
        l: { ...mrd1, side: 'left' },
        sign: { kind: 'finding', region: 'forehead', side: 'right', words: { scar: 'scar' } },
      },
    });
    const { exams } = convert(
      ['no,pid,day,lids,skin', '1,H-1,2024-02-05,"MRD1 R 4.5, L 2 mm",S1'],
      mapping,
    );
    expect(exams[0]?.exam.statements).toMatchObject([
      { side: 'right', value: '4.5' },
      { side: 'left', value: '2' },
      { finding: 'scar' },
    ]);
    expect(exams[0]?.ledger.map(({ operations }) => operations)).toEqual([
      undefined,
      undefined,
      undefined,
      ['pick'],
      ['look-up'],
    ]);
  });

  it.each([
    ['{a:number}{b:number}', ['cells', 0, 'patterns', 0]],
    ['no place holder', ['cells', 0, 'patterns', 0]],
  ])('refuses the pattern %s', (pattern, path) => {
    const mapping = mappingOf({ cells: [{ do: 'pick', from: 'x', patterns: [pattern] }] });
    expect(prepareMapping(mapping).issues).toMatchObject([{ code: 'invalid-value', path }]);
  });
});

describe('pairs', () => {
  const pair = { right: 'MRD1_R', left: 'MRD1_L', target: mrd1 };

  it('say once what holds for both sides', () => {
    const { exams } = convert(
      ['no,pid,day,MRD1_R,MRD1_L', '1,H-1,2024-02-05,4.5,2'],
      mappingOf({ pairs: [pair] }),
    );
    expect(exams[0]?.exam.statements).toMatchObject([
      { measure: 'mrd1', side: 'right', value: '4.5' },
      { measure: 'mrd1', side: 'left', value: '2' },
    ]);
  });

  it.each([
    [
      'a side of its own',
      { ...pair, target: { ...mrd1, side: 'right' } as const },
      'side-conflict',
    ],
    ['one name twice', { ...pair, left: 'MRD1_R' }, 'ambiguous-mapping'],
  ])('refuses %s', (_, wrong, code) => {
    const { issues } = prepareMapping(mappingOf({ pairs: [wrong] }));
    expect(issues.map((one) => one.code)).toContain(code);
  });
});

const note = { kind: 'note' } as const;
const fields = { remark: note };

describe('tables of spreadsheets', () => {
  const texts = ({ exams }: ConvertResult): unknown[] =>
    exams.map(({ exam }) => [
      exam.id,
      exam.subject.identifiers?.[0]?.value,
      ...exam.statements.map((one) => ('text' in one ? one.text : one.kind)),
    ]);

  it('passes over a title, a line sep=, and takes two rows of headings as one', () => {
    const lines = ['Harbour checks', '', 'sep=,', 'no,pid,day,lids,,', ',,,right,left,remark'];
    const mapping = mappingOf(
      {
        fields: {
          'lids right': { ...mrd1, side: 'right' },
          'lids left': { ...mrd1, side: 'left' },
          'lids remark': note,
        },
      },
      { skip: 2, headingRows: 2 },
    );
    const { exams } = convert([...lines, '1,H-1,2024-02-05,4,2,tired'], mapping);
    expect(exams[0]?.exam.statements).toMatchObject([
      { side: 'right', value: '4' },
      { side: 'left', value: '2' },
      { text: 'tired' },
    ]);
  });

  it('tells a line sep= that names another delimiter', () => {
    const result = fromCsv('sep=;\nno,pid,day,remark\n1,H-1,2024-02-05,x', mappingOf({ fields }));
    expect(result.quarantine[0]?.issues).toMatchObject([{ code: 'invalid-value' }]);
    expect(result.exams).toHaveLength(1);
  });

  it.each(['="00123"', '"=""00123"""', '00123'])('reads %s as the text 00123', (cell) => {
    const lines = ['no,pid,day,remark', `1,${cell},2024-02-05,"a, b"`, '2,H-2,2024-02-05,=1+1'];
    expect(texts(convert(lines, mappingOf({ fields })))).toEqual([
      ['c.1', '00123', 'a, b'],
      ['c.2', 'H-2', '=1+1'],
    ]);
  });

  it('fills merged cells down, with the place of the cell above, and no further than one person', () => {
    const mapping = mappingOf({ fields }, { fillDown: ['pid', 'day'] });
    const result = convert(
      [
        'no,pid,day,remark',
        '1,H-1,2024-02-05,one',
        '2,,,two',
        '3,,2024-02-06,three',
        '4,,,four',
        // Another person: the day above is not theirs.
        '5,H-2,,five',
      ],
      mapping,
    );
    expect(
      result.exams.map(({ exam }) => [exam.subject.identifiers?.[0]?.value, exam.performed.start]),
    ).toEqual([
      ['H-1', '2024-02-05'],
      ['H-1', '2024-02-05'],
      ['H-1', '2024-02-06'],
      ['H-1', '2024-02-06'],
    ]);
    expect(result.exams[1]?.ledger.map(({ at }) => at)).toContainEqual({ line: 2, column: 2 });
    expect(result.quarantine.map(({ at }) => at)).toEqual([{ line: 6 }]);
  });

  it('fills nothing below a row that can not be read', () => {
    const mapping = mappingOf({ fields }, { fillDown: ['pid', 'day'] });
    const lines = ['no,pid,day,remark', '1,H-1,2024-02-05,one', '2,H-2,"bro', '3,,,three'];
    const { exams, quarantine } = fromCsv(lines.join('\n'), mapping);
    expect(exams.map(({ exam }) => exam.id)).toEqual(['c.1']);
    expect(quarantine.length).toBeGreaterThan(0);
  });
});
