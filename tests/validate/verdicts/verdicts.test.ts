import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { faultsTable, tableFile } from '../../reference/faults-table.ts';
import { keptVerdicts } from '../../reference/verdicts.ts';
import { describeMutants } from './mutant-verdicts.ts';

// HL7's validator gave its verdicts once; tests/reference/mutants.test.ts has it give them again.
// All mutants of all versions are in tests/published/mutant-verdicts.test.ts.

describeMutants('R4', 23);

describe('table of faults', () => {
  it('is that of the kept verdicts', () => {
    expect(readFileSync(tableFile, 'utf8')).toBe(faultsTable(keptVerdicts()));
  });
});
