import { describe, expect, it } from 'vitest';
import * as r4 from '../../../src/validate/versions/r4.ts';
import * as r4b from '../../../src/validate/versions/r4b.ts';
import * as r5 from '../../../src/validate/versions/r5.ts';
import { vitalSignCases } from '../../reference/all-types/vital-signs.ts';
import { corpora, keptCorpusVerdicts, keyOf } from '../../reference/corpora.ts';

const entries = { R4: r4, R4B: r4b, R5: r5 } as const;
const corpus = corpora.find(({ name }) => name === 'vital-signs') ?? expect.fail();
const kept = keptCorpusVerdicts(corpus);

// https://hl7.org/fhir/R4/observation-vitalsigns.html: each code that a profile applies by, and each
// thing that a profile asks for, beside the kept verdict of HL7's validator.
describe.each(['R4', 'R4B', 'R5'] as const)('vital signs of %s', (version) => {
  it("have the verdict of HL7's validator", () => {
    const cases = vitalSignCases(version);
    const differing = cases.filter((one) => {
      const { issues } = entries[version].validateBundle(JSON.parse(one.text));
      const ours = issues.some(({ severity }) => severity === 'error');
      return ours !== (kept.get(keyOf(one))?.length !== 0);
    });
    expect(differing.map(({ id }) => id)).toEqual([]);
    expect(cases.length).toBeGreaterThan(60);
  });

  it('are checked whole where they are sound', () => {
    const sound = vitalSignCases(version).filter(({ id }) => id.endsWith(' sound'));
    for (const { text } of sound) {
      expect(entries[version].validateBundle(JSON.parse(text)).conformance).toBe('conforms');
    }
  });
});
