import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../src/convert/csv/from-csv.ts';
import type { Mapping } from '../../src/convert/mapping/mapping.ts';
import { parseMappingText } from '../../src/convert/prepare/read-mapping.ts';
import { toBundle } from '../../src/export/to-bundle.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';

const folder = join(import.meta.dirname, '../../examples/convert');
const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
// fromCsv checks it.
const mapping = parseMappingText(read('vineyard.mapping.json')).value as Mapping;

describe('the example of a conversion', () => {
  const { exams, quarantine, issues, ledger } = fromCsv(read('vineyard.csv'), mapping);

  it('converts what can be told, and sets aside what cannot', () => {
    expect(issues).toEqual([]);
    expect(exams.map(({ exam }) => exam.id)).toEqual(
      ['K-101', 'K-102', 'K-103', 'K-106'].map((number) => `vineyard.${number}`),
    );
    expect(quarantine.map(({ reason, at }) => [reason, at])).toEqual([
      ['damaged-value', { line: 5 }],
      ['impossible-date', { line: 6 }],
    ]);
    expect(ledger.coded + ledger.verbatim + ledger.blank + ledger.layout + ledger.quarantined).toBe(
      ledger.fields,
    );
    expect(ledger.fields).toBe(6 * 18);
  });

  it('tells what it did not code, with its place', () => {
    const told = exams.flatMap((one) =>
      one.issues.map(({ code, path, source }) => [code, path[0], source]),
    );
    expect(told).toEqual([
      ['decimal-mark', 'MRD1_L', { line: 4, column: 7 }],
      ['not-a-number', 'MRD1_R', { line: 7, column: 6 }],
      ['damaged-value', 'MRD1_L', { line: 7, column: 7 }],
      ['unknown-word', 'ears_R', { line: 7, column: 8 }],
      ['unknown-word', 'septum', { line: 7, column: 10 }],
      ['unknown-word', 'node_2A_L', { line: 7, column: 12 }],
      ['unknown-word', 'tinnitus', { line: 7, column: 15 }],
    ]);
  });

  it('makes valid bundles', () => {
    for (const { exam } of exams) {
      const { value } = toBundle(exam);
      expect(validateBundle(value).valid).toBe(true);
    }
  });
});
