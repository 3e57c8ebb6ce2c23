import { describe, expect, it } from 'vitest';
import type { XmlSource } from '../../../src/convert/mapping/source.ts';
import { xmlReader } from '../../../src/convert/xml/reader.ts';
import { sampled } from '../../sampled.ts';
import { checkMessy, checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { messyDocument } from './messy-documents.ts';
import { xmlSuite } from './suite.ts';

const source: XmlSource = {
  syntax: 'xml',
  exam: 'export/exam',
  items: ['findings/finding', 'measures/measure', 'regions/region/sign'],
};
const syntax = syntaxOf(xmlSuite.mapping, xmlReader(source), false);

const MANY = sampled(40, 200);

describe('messy XML', () => {
  it.each([1, 2, 3])('loses nothing of many exams (seed %i)', (seed) => {
    const result = checkMessy(messyDocument(seed, MANY), syntax);
    // The mess must not be so bad that nothing is left to check, nor so tidy that nothing is wrong.
    expect(result.exams.length).toBeGreaterThan(sampled(10, 80));
    expect(result.quarantine.length).toBeGreaterThan(sampled(1, 10));
  });

  it('survives damage anywhere', () => {
    const random = seeded(4);
    for (let round = 0; round < sampled(20, 150); round++) {
      const { text } = messyDocument(round, 3);
      checkMutated(mutated(text, '<>/"\'=&;![]-? exam\u0000', random), syntax);
    }
  });
});
