import { describe, expect, it } from 'vitest';
import { cdaReader } from '../../../src/convert/cda/reader.ts';
import { sampled } from '../../sampled.ts';
import { checkMessy, checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { messyDocuments } from './messy-documents.ts';
import { cdaSuite } from './suite.ts';

const syntax = syntaxOf(cdaSuite.mapping, cdaReader, false);

const MANY = sampled(40, 200);

describe('messy CDA', () => {
  it.each([1, 2, 3])('loses nothing of many documents (seed %i)', (seed) => {
    const result = checkMessy(messyDocuments(seed, MANY), syntax);
    // The mess must not be so bad that nothing is left to check, nor so tidy that nothing is wrong.
    expect(result.exams.length).toBeGreaterThan(80 * (MANY / 200));
    expect(result.quarantine.length).toBeGreaterThan(sampled(1, 10));
  });

  it('survives damage anywhere', () => {
    const random = seeded(4);
    for (let round = 0; round < sampled(20, 150); round++) {
      const { text } = messyDocuments(round, 3);
      checkMutated(mutated(text, '<>/"\'=&;![]-? exam\u0000', random), syntax);
    }
  });
});
