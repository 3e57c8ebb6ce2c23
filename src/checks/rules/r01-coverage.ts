import { coverageGaps } from '../coverage/coverage.ts';
import type { ComputationRule } from '../rule.ts';

/** Fires when the exam is silent on something that its protocol asks for. */
export const r01Coverage: ComputationRule = {
  id: 'R01',
  title: 'Coverage of the protocol',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'common practice, no source; openEHR keeps "examination not done" beside findings',
  evidence: 'common-practice',
  run: ({ coverage }) => {
    if (coverage === undefined) {
      return [
        {
          outcome: 'not-evaluable',
          inputsUsed: [],
          inputsMissing: ['a protocol that the catalogue holds'],
          text: 'Coverage cannot be told: the protocol of the exam is not known.',
        },
      ];
    }
    const { required, covered, complete, partial, carried, documented, gaps } = coverage.regions;
    const other = coverageGaps(coverage).filter((item) => item.kind !== 'region').length;
    return [
      {
        outcome: gaps + carried + other > 0 ? 'fires' : 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: `Regions and sides examined as a whole ${complete} of ${required}, in part ${partial}, said not to be examined ${documented}, taken over and not looked at again ${carried}, without a statement ${gaps}; methods, points, tests and measures without a statement ${other}.`,
        values: [
          { name: 'required', value: String(required) },
          { name: 'covered', value: String(covered) },
          { name: 'complete', value: String(complete) },
          { name: 'partial', value: String(partial) },
          { name: 'carried', value: String(carried) },
          { name: 'documented', value: String(covered + documented) },
          { name: 'gaps', value: String(gaps) },
        ],
      },
    ];
  },
};
