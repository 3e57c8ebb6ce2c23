import { describe, expect, it } from 'vitest';
import { cdaReader } from '../../../src/convert/cda/reader.ts';
import { checkMessy, checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { messyDocuments } from './messy-documents.ts';
import { cdaSuite } from './suite.ts';

const syntax = syntaxOf(cdaSuite.mapping, cdaReader, false);

describe('messy CDA', () => {
  it.each([1, 2, 3])('loses nothing of 200 documents (seed %i)', (seed) => {
    const result = checkMessy(messyDocuments(seed, 200), syntax);
    // The mess must not be so bad that nothing is left to check, nor so tidy that nothing is wrong.
    expect(result.exams.length).toBeGreaterThan(80);
    expect(result.quarantine.length).toBeGreaterThan(10);
  });

  it('survives damage anywhere', () => {
    const random = seeded(4);
    for (let round = 0; round < 150; round++) {
      const { text } = messyDocuments(round, 3);
      checkMutated(mutated(text, '<>/"\'=&;![]-? exam\u0000', random), syntax);
    }
  });
});
