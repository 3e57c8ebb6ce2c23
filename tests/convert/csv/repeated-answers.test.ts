import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';

// The file is checked against the schema of mappings when it is used.
const mapping = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../cases/csv/mappings/long.json'), 'utf8'),
) as Mapping;

/** Rows of one exam: the two modalities of one point, each said once or again, beside another unit. */
const rows = [
  'V2_SOFT,R,n,,,',
  'V2_SHARP,R,red,,,',
  'V2_SOFT,R,n,mm,,',
  'V2_SHARP,R,red,mm,,',
  'V2_SHARP,R,red,cm,,',
];

/** Every order of every choice of the rows, by counting in base 5. */
function* choices(): Generator<string[]> {
  for (let number = 0; number < 5 ** 4; number += 1) {
    const digits = number.toString(5).padStart(4, '0').split('').map(Number);
    yield [...new Set(digits)].map((digit) => rows[digit] ?? '');
  }
}

// A ledger that sets fields apart whose record was converted tells of a loss that there was not.
describe('answers that are said again', () => {
  it('are coded in the ledger, whichever was said first and whatever completed what', () => {
    const seen = new Set<string>();
    for (const chosen of choices()) {
      const key = chosen.join('\n');
      if (seen.has(key)) continue;
      seen.add(key);
      const lines = chosen.map((row) => `E1,B1,2024-02-05,${row}`);
      const text = ['exam,badge,day,item,side,value,unit,method,note', ...lines].join('\r\n');
      const { exams, ledger } = fromCsv(text, mapping);
      expect(exams[0]?.exam.statements, key).toHaveLength(1);
      expect(ledger.quarantined, key).toBe(0);
      expect(ledger.coded + ledger.blank, key).toBe(ledger.fields);
    }
    expect(seen.size).toBeGreaterThan(100);
  });
});
