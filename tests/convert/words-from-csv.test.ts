import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { withWords, wordsFromCsv } from '../../src/convert/code-map/words-from-csv.ts';
import { fromCsv } from '../../src/convert/csv/from-csv.ts';
import type { Mapping } from '../../src/convert/mapping/mapping.ts';
import { orThrow } from '../../src/issues/issue.ts';
import { inFolder, run } from '../cli/in-process.ts';

const mapping: Mapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'csv' },
  exam: {
    id: { prefix: 'quay', from: ['id'] },
    status: { value: 'final' },
    subject: { name: 'name' },
    performed: { start: 'date' },
    recorded: { value: '2024-03-01T10:00:00Z' },
    examiner: { fixed: { name: 'Nell Berth' } },
    protocol: { id: 'full', version: '1.0.0' },
  },
  fields: {
    ptosis: {
      kind: 'finding',
      finding: 'lid-position.ptosis',
      region: 'lid-upper',
      sideFrom: 'side',
      words: 'seen',
    },
  },
};

const table = [
  'table,word,meaning,reason,text',
  'seen,Y,present,,',
  'seen,N,absent,,',
  'seen,bandaged,not-examined,dressing,a bandage',
  'sides,re,right,,',
  'sides,li,left,,',
].join('\n');

const data = 'id,name,date,ptosis,side\n1,Ada Rope,2024-03-01,Y,re\n2,Tom Knot,2024-03-02,N,li\n';

describe('tables of words as CSV', () => {
  it('mean in a mapping what its own tables would', () => {
    const tables = orThrow('read the words', wordsFromCsv(table));
    expect(tables).toEqual({
      sides: { re: 'right', li: 'left' },
      words: {
        seen: {
          Y: 'present',
          N: 'absent',
          bandaged: { state: 'not-examined', reason: 'dressing', text: 'a bandage' },
        },
      },
    });
    const { exams } = fromCsv(data, {
      ...mapping,
      ...tables,
      words: { seen: { Y: 'present', N: 'absent' } },
    });
    expect(exams.map(({ exam }) => exam.statements[0])).toMatchObject([
      { presence: 'present', side: 'right' },
      { presence: 'absent', side: 'left' },
    ]);
  });

  it('stand below what the mapping says itself', () => {
    const own = { ...mapping, words: { seen: { Y: 'indeterminate' } } };
    const { words, sides } = withWords(own, orThrow('read the words', wordsFromCsv(table)));
    expect(words?.['seen']).toMatchObject({ Y: 'indeterminate', N: 'absent' });
    expect(sides).toEqual({ re: 'right', li: 'left' });
  });

  it.each<readonly [string, string, string, string | undefined, number | undefined]>([
    [
      'a word that stands twice',
      'seen,Y,present\nseen,Y,absent',
      'ambiguous-mapping',
      undefined,
      3,
    ],
    ['a meaning with a near name', 'seen,Y,presnt', 'unknown-code', 'present', 2],
    [
      'a code with a near name',
      'seen,Y,lid-position.ptosiss',
      'unknown-code',
      'lid-position.ptosis',
      2,
    ],
    ['a region that there is not', 'regions,Lid,lid-uper', 'unknown-code', 'lid-upper', 2],
    ['a side that there is not', 'sides,re,rihgt', 'unknown-code', 'right', 2],
    ['a unit that there is not', 'units,Millimeter,mmm', 'unknown-code', 'mm', 2],
    ['a row without a table', ',Y,present', 'missing-property', undefined, 2],
  ])('tell %s, with its line', (_, rows, code, near, line) => {
    const { value, issues } = wordsFromCsv(`table,word,meaning\n${rows}`);
    expect(value).toBeUndefined();
    const [first] = issues;
    expect(first).toMatchObject({ code, source: { line } });
    if (near !== undefined) expect(first?.expected).toContain(near);
  });

  it.each([
    ['a column that is missing', 'table,word\nseen,Y', 'missing-field'],
    [
      'a column without a meaning',
      'table,word,meaning,colour\nseen,Y,present,red',
      'unknown-property',
    ],
    ['no row', 'table,word,meaning\n', 'empty-value'],
  ])('tell %s', (_, text, code) => {
    expect(wordsFromCsv(text).issues.map((one) => one.code)).toContain(code);
  });

  it('are given on the command line', async () => {
    await inFolder(async (folder) => {
      const at = (name: string, text: string): string => {
        writeFileSync(join(folder, name), text);
        return join(folder, name);
      };
      const files = [
        at('data.csv', data),
        '--mapping',
        at('mapping.json', JSON.stringify(mapping)),
      ];
      const words = table.replace('seen,bandaged,not-examined,dressing,a bandage\n', '');
      const { code, out } = await run([
        ...['convert', ...files, '--to', 'exams', '--words', at('words.csv', words)],
      ]);
      expect(code).toBe(0);
      expect(
        out
          .trim()
          .split('\n')
          .map((line) => JSON.parse(line).statements[0].presence),
      ).toEqual(['present', 'absent']);
      const bad = await run(['convert', ...files, '--words', at('bad.csv', 'table,word\nseen,Y')]);
      expect(bad.code).toBe(1);
    });
  });
});
