import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { readMapping } from '../../../src/convert/prepare/read-mapping.ts';
import { suggestMapping } from '../../../src/convert/suggest/suggest-mapping.ts';
import { suggestionText } from '../../../src/convert/suggest/suggestion-text.ts';
import { messyMessages } from '../hl7v2/messy-messages.ts';
import { mergePatch } from '../merge-patch.ts';

const long = [
  'exam id;worker no;exam date;sex;item;side;value;unit;remark',
  'E1;W1;2024-02-15;F;MRD1;R;4.5;mm;',
  'E1;W1;2024-02-15;F;V2 soft;L;reduced;;tired',
  'E2;W2;2024-02-16;m;septum;;NAD;;',
  'E2;W2;2024-02-16;m;MRD1;ipsi;4.0;px;',
  'E2;W2;2024-02-16;m;hat size;;58;;',
].join('\n');

/** What no sample can tell. */
const told = {
  exam: {
    id: { prefix: 'harbour' },
    status: { value: 'final' },
    subject: { identifiers: [{ from: 'worker no', system: 'https://harbour.example/workers' }] },
    recorded: { value: '2025-01-15T08:00:00Z' },
    examiner: { fixed: { name: 'Harbour surgery' } },
    protocol: { id: 'full', version: '1.0.0' },
  },
};

describe('suggestMapping', () => {
  const { mapping, issues } = suggestMapping(long);
  const open = issues.map(({ code, path }) => `${code} ${path.join('.')}`);

  it('finds the delimiter, the grouping and the uses of columns', () => {
    expect(mapping.source).toEqual({ syntax: 'csv', delimiter: ';', groupBy: ['exam id'] });
    expect(mapping.exam).toMatchObject({
      id: { from: ['exam id'] },
      performed: { start: 'exam date' },
      subject: { gender: { from: 'sex', words: { F: 'female', m: 'male' } } },
    });
    expect(mapping.dates).toEqual({ formats: ['YYYY-MM-DD'] });
    expect(mapping.items).toEqual([
      {
        code: ['item'],
        value: 'value',
        side: 'side',
        unit: 'unit',
        note: 'remark',
        map: {
          MRD1: { kind: 'measurement', measure: 'mrd1' },
          'V2 soft': {
            kind: 'sensation',
            point: 'v2',
            modality: 'light-touch',
            words: { reduced: 'reduced' },
          },
          septum: { kind: 'region-state', region: 'septum', words: { NAD: 'text' } },
        },
      },
    ]);
  });

  it('does not guess: side and unit words, abbreviations and unknown names are left open', () => {
    expect(mapping.sides).toEqual({ R: 'right', L: 'left' });
    expect(mapping.units).toEqual({ mm: 'mm' });
    expect(open).toContain('unmapped-field hat size');
    expect(open).toContain('unknown-word septum.NAD');
    expect(open).toContain('missing-property exam.status');
  });

  it('is a mapping once a person has told the rest', () => {
    const result = fromCsv(long, mergePatch(mapping, told));
    expect(result.exams.map(({ exam }) => exam.statements.map(({ kind }) => kind))).toEqual([
      ['measurement', 'sensation'],
      ['note', 'note', 'note'],
    ]);
    expect(result.quarantine).toEqual([]);
  });

  it('leaves day and month open where the sample does not tell them apart', () => {
    const sample = (date: string): string => `exam no,exam date,MRD1_L\nX1,${date},4\n`;
    const both = suggestMapping(sample('05/02/2024'));
    expect(both.mapping.dates).toBeUndefined();
    expect(both.issues).toContainEqual(
      expect.objectContaining({
        code: 'ambiguous-mapping',
        path: ['exam date'],
        expected: 'DD/MM/YYYY or MM/DD/YYYY in dates.formats',
      }),
    );
    expect(suggestMapping(sample('15/02/2024')).mapping.dates).toEqual({
      formats: ['DD/MM/YYYY'],
    });
    expect(suggestMapping(sample('02/15/2024')).mapping.dates).toEqual({
      formats: ['MM/DD/YYYY'],
    });
  });

  it('offers codes that begin with the name', () => {
    const { issues: found } = suggestMapping('exam no,cheek_L\nX1,WNL\n');
    expect(found[0]?.expected).toMatch(
      /perhaps cheek-malar, cheek-buccal| cheek-malar or cheek-buccal/,
    );
  });

  it('takes HL7 v2 by the fields of the standard', () => {
    const { mapping: made } = suggestMapping(messyMessages(1, 30).text, {
      source: { syntax: 'hl7v2' },
    });
    expect(made.exam).toMatchObject({ id: { from: ['OBR-3'] }, performed: { start: 'OBR-7' } });
    expect(made.items).toMatchObject([
      {
        kind: 'OBX',
        code: ['OBX-3'],
        value: 'OBX-5',
        map: { MRD1: { kind: 'measurement', measure: 'mrd1' } },
      },
    ]);
  });

  it.each(['', '\n\n', 'x', '"', 'a,b\n"', '\u0000'])('takes any sample (%j)', (text) => {
    expect(suggestMapping(text).issues.length).toBeGreaterThan(0);
  });
});

describe('suggestionText', () => {
  it('is a mapping file with what is open as comments', () => {
    const text = suggestionText(suggestMapping(long));
    expect(text).toContain('// Still open:\n//   warning');
    const { value, issues } = readMapping(text);
    expect(value).toBeUndefined();
    // Only what no sample can tell is missing.
    expect(issues.map(({ path }) => path.join('.'))).toEqual([
      'exam.status',
      'exam.protocol',
      'exam.id.prefix',
      'exam.subject.identifiers.0.system',
    ]);
  });
});
