import { describe, expect, it } from 'vitest';
import { compareCorpus } from '../reference/compare-corpora.ts';
import { corpora } from '../reference/corpora.ts';
import { releases } from '../reference/definitions.ts';

// Resources of every type, sound and broken, in JSON and XML, at the fast level, beside the kept
// verdicts of HL7's validator; tests/reference/record-corpora.ts names its chain.
describe.each(corpora)('corpus $name', (corpus) => {
  it.each(releases)(
    "has the verdicts of HL7's validator in %s, but for judged differences",
    async (version) => {
      const { cases, agreed, judged, surprises } = await compareCorpus(corpus, version);
      console.info(`${corpus.name} ${version}: ${agreed} of ${cases} agree`);
      for (const [{ we, says, right }, count] of judged) {
        console.info(`  ${we} by us alone: ${count}, ${says.source.slice(0, 50)}, right: ${right}`);
      }
      expect(surprises).toEqual([]);
      expect(cases).toBeGreaterThan(60);
    },
  );
});
