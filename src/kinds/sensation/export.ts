import type { ObservationComponent } from 'fhir/r4.js';
import type { ExportContext } from '../../export/context.ts';
import {
  absentReason,
  type Exporter,
  flagComponent,
  subjectConcept,
} from '../../export/resources/observation.ts';
import { interpretation, interpretationsOf } from '../../fhir/observation-codes.ts';
import { type ModalityResult, modalitySaid, type Sensation } from './statement.ts';

/** One observation for a point and side, one component for each modality. */
export const sensationExport: Exporter<Sensation> = {
  profile: 'face-neck-sensation',
  parts: (context, sensation) => ({
    code: subjectConcept(context, sensation),
    components: [
      ...sensation.results.map((result) => modalityComponent(context, sensation.point, result)),
      ...(sensation.eyesClosed === undefined
        ? []
        : [flagComponent(context, 'eyes-closed', sensation.eyesClosed)]),
    ],
  }),
};

function modalityComponent(
  context: ExportContext,
  point: string,
  stated: ModalityResult,
): ObservationComponent {
  const { coder, catalogue } = context;
  const code = coder.concept('modalities', stated.modality);
  if (stated.reason !== undefined) {
    const result = coder.codings('sensationResults', stated.result);
    return { code, dataAbsentReason: absentReason(context, stated.reason, result) };
  }
  const meanings = interpretationsOf([modalitySaid(point, stated, catalogue)]);
  return {
    code,
    valueCodeableConcept: coder.concept('sensationResults', stated.result),
    ...(meanings.length > 0 && { interpretation: meanings.map(interpretation) }),
  };
}
