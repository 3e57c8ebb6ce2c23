import { absentReason, codedComponent, type Exporter } from '../../export/resources/observation.ts';
import type { RegionState } from './statement.ts';

/** What became of a region: normal, abnormal, partly examined, not examined, not there. */
export const regionStateExport: Exporter<RegionState> = {
  profile: 'face-neck-region-state',
  parts: (context, state) => {
    const { coder } = context;
    const code = coder.concept('items', 'region-state');
    const answer = `state.${state.state}` as const;
    switch (state.state) {
      case 'normal':
      case 'abnormal':
        return { code, value: { valueCodeableConcept: coder.concept('values', answer) } };
      case 'partial': {
        const limit = {
          coding: coder.codings('reasons', state.limit.code),
          text: state.limit.text ?? coder.display('reasons', state.limit.code),
        };
        return {
          code,
          value: { valueCodeableConcept: coder.concept('values', answer) },
          components: [codedComponent(context, 'limit', limit)],
        };
      }
      case 'not-examined':
      case 'not-applicable':
        // The statement that nothing was done is complete, so its status is that of any other; a receiver
        // that passes over what is cancelled would keep silence in its place.
        return {
          code,
          dataAbsentReason: absentReason(context, state.reason, coder.codings('values', answer)),
        };
    }
  },
};
