import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { csvReader } from '../../../src/convert/csv/reader.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { sampled } from '../../sampled.ts';
import { checkMessy, checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { messyRows } from './messy-rows.ts';
import { csvSyntax } from './suite.ts';

const MANY = sampled(40, 200);

describe('messy CSV', () => {
  it.each([1, 2, 3])('loses nothing of many rows (seed %i)', (seed) => {
    const result = checkMessy(messyRows(seed, MANY), csvSyntax);
    // The mess must not be so bad that nothing is left to check, nor so tidy that nothing is wrong.
    expect(result.exams.length).toBeGreaterThan(50 * (MANY / 200));
    expect(result.quarantine.length).toBeGreaterThan(sampled(2, 20));
  });

  it('survives damage anywhere', () => {
    const random = seeded(4);
    for (let round = 0; round < sampled(40, 300); round++) {
      const { text } = messyRows(round, 4);
      checkMutated(mutated(text, ',;"\r\n\t\u0000/', random), csvSyntax);
    }
  });

  it('survives damage anywhere in a table of several rows for an exam', () => {
    const random = seeded(5);
    const file = join(import.meta.dirname, '../../cases/csv/mappings/long.json');
    const mapping: Mapping = JSON.parse(readFileSync(file, 'utf8'));
    if (mapping.source.syntax !== 'csv') throw new Error('the mapping is for CSV');
    const syntax = syntaxOf(mapping, csvReader(mapping.source), false);
    const lines = ['exam,badge,day,item,side,value,unit,method,note'];
    for (const exam of ['E1', 'E2', 'E3']) {
      lines.push(
        `${exam},B7,2024-02-05,MRD1,R,4.5,mm,,`,
        `${exam},B7,2024-02-05,CHEEK,L,WNL,,insp,"dry, ""red"""`,
      );
    }
    for (let round = 0; round < sampled(40, 300); round++) {
      checkMutated(mutated(lines.join('\r\n'), ',"\r\nE1', random), syntax);
    }
  });
});
