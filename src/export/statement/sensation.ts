import type { Observation, ObservationComponent } from 'fhir/r4.js';
import { interpretation } from '../../fhir/observation-codes.ts';
import { resourceName } from '../../fhir/resource-names.ts';
import type { ModalityResult, Sensation, SensationComparison } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import { absentReason, codedComponent, flagComponent, observationOf } from '../observation.ts';

/** One observation for a point and side, one component for each modality. */
export function sensationObservation(context: ExportContext, sensation: Sensation): Observation {
  const { coder, catalogue } = context;
  const results = sensation.results.map(({ result }) => catalogue.sensationResults.get(result));
  const tested = results.filter((row) => row?.untested !== true);
  const allUsual = tested.every((row) => row?.usual === true);
  return observationOf(context, sensation, {
    code: coder.concept('testPoints', sensation.point),
    bodySite: siteOfPoint(context, sensation.point, sensation.side),
    interpretation: tested.length === 0 ? undefined : allUsual ? 'N' : 'A',
    components: [
      ...sensation.results.map((result) => modalityComponent(context, result)),
      ...(sensation.eyesClosed === undefined
        ? []
        : [flagComponent(context, 'eyes-closed', sensation.eyesClosed)]),
    ],
  });
}

function modalityComponent(context: ExportContext, stated: ModalityResult): ObservationComponent {
  const { coder, catalogue } = context;
  const row = catalogue.sensationResults.get(stated.result);
  const code = coder.concept('modalities', stated.modality);
  if (row?.untested === true && stated.reason !== undefined) {
    const result = coder.codings('sensationResults', stated.result);
    return { code, dataAbsentReason: absentReason(context, stated.reason, result) };
  }
  return {
    code,
    valueCodeableConcept: coder.concept('sensationResults', stated.result),
    interpretation: [interpretation(row?.usual === true ? 'N' : 'A')],
  };
}

/** The patient's own comparison of both sides, derived from the two observations where both were made. */
export function comparisonObservation(
  context: ExportContext,
  comparison: SensationComparison,
): Observation {
  const { coder } = context;
  const compared = context.sensations.get(comparison.point) ?? [];
  const untested = comparison.result === 'not-compared' && comparison.reason !== undefined;
  return observationOf(context, comparison, {
    code: coder.concept(
      'items',
      'sensation-comparison',
      `${coder.display('items', 'sensation-comparison')}: ${coder.display('testPoints', comparison.point)}`,
    ),
    bodySite: siteOfPoint(context, comparison.point, 'both'),
    ...(untested
      ? { dataAbsentReason: absentReason(context, comparison.reason) }
      : {
          value: {
            valueCodeableConcept: coder.concept('values', `comparison.${comparison.result}`),
          },
          interpretation: comparison.result === 'equal' ? ('N' as const) : ('A' as const),
        }),
    ...(compared.length > 0 && {
      derivedFrom: compared.map((key) => context.reference(resourceName.statement(key))),
    }),
    components: [
      codedComponent(context, 'test-point', coder.concept('testPoints', comparison.point)),
      codedComponent(context, 'modality', coder.concept('modalities', comparison.modality)),
    ],
  });
}

function siteOfPoint(
  context: ExportContext,
  point: string,
  side: Sensation['side'] | 'both',
): Observation['bodySite'] {
  const region = context.catalogue.testPoints.get(point)?.region;
  return region === undefined ? undefined : bodySite(context, region, side);
}
