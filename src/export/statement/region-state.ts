import type { Coding, Observation } from 'fhir/r4.js';
import type { RegionState } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import {
  absentReason,
  codedComponent,
  type ObservationParts,
  observationOf,
  textComponent,
} from '../observation.ts';

/** What became of a region: normal, abnormal, partly examined, not examined, not there. */
export function regionStateObservation(context: ExportContext, state: RegionState): Observation {
  const { coder } = context;
  const { components = [], ...parts } = stateParts(context, state);
  return observationOf(context, state, {
    code: coder.concept('items', 'region-state'),
    bodySite: bodySite(context, state.region, state.side),
    methods: state.methods,
    ...parts,
    components: [
      ...(state.place === undefined ? [] : [textComponent(context, 'place', state.place)]),
      ...components,
    ],
  });
}

function stateParts(context: ExportContext, state: RegionState): Partial<ObservationParts> {
  const { coder } = context;
  const stateCodings = (): Coding[] => coder.codings('values', `state.${state.state}`);
  const value = (): NonNullable<ObservationParts['value']> => ({
    valueCodeableConcept: coder.concept('values', `state.${state.state}`),
  });
  switch (state.state) {
    case 'normal':
      return { value: value(), interpretation: 'N' };
    case 'abnormal':
      return { value: value(), interpretation: 'A' };
    case 'partial':
      return {
        value: value(),
        components: [
          codedComponent(context, 'limit', {
            coding: coder.codings('reasons', state.limit.code),
            text: state.limit.text ?? coder.display('reasons', state.limit.code),
          }),
        ],
      };
    case 'not-examined':
      // `cancelled`: the measurement was not started or not completed.
      // https://hl7.org/fhir/R4/valueset-observation-status.html
      return {
        dataAbsentReason: absentReason(context, state.reason, stateCodings()),
        ...(context.status(state.key) !== 'entered-in-error' && { status: 'cancelled' }),
      };
    case 'not-applicable':
      return { dataAbsentReason: absentReason(context, state.reason, stateCodings()) };
  }
}
