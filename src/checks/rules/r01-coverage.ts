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
          text: 'Coverage can not be told: the protocol of the exam is not known.',
        },
      ];
    }
    const { required, covered, documented, gaps } = coverage.regions;
    const other = coverageGaps(coverage).filter((item) => item.kind !== 'region').length;
    return [
      {
        outcome: gaps + other > 0 ? 'fires' : 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: `Regions and sides covered ${covered} of ${required}, documented ${covered + documented} of ${required}, without a statement ${gaps}; methods, points, tests and measures without a statement ${other}.`,
        values: [
          { name: 'required', value: String(required) },
          { name: 'covered', value: String(covered) },
          { name: 'documented', value: String(covered + documented) },
          { name: 'gaps', value: String(gaps) },
        ],
      },
    ];
  },
};
