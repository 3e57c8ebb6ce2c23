import { expect, test } from 'vitest';
import { compareCorpus } from '../../reference/compare-corpora.ts';
import { corpora } from '../../reference/corpora.ts';
import { releases } from '../../reference/definitions.ts';

// Resources written for one rule each, beside the kept verdicts of HL7's validator (HAPI 8.4.0);
// tests/reference/all-types/differences.ts judges where they differ.

test.each(releases)('rules of one type of resource in %s', async (version) => {
  const wholes = corpora.find(({ name }) => name === 'wholes');
  if (wholes === undefined) throw new Error('no corpus of whole resources');
  const { cases, agreed, surprises } = await compareCorpus(wholes, version);
  expect(surprises).toEqual([]);
  expect(cases).toBeGreaterThan(400);
  expect(agreed).toBeGreaterThan(370);
});
