import { absentReason, codedComponent, type Exporter } from '../../export/resources/observation.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import type { SensationComparison } from './statement.ts';

/** The patient's own comparison of both sides, derived from the two observations where both were made. */
export const comparisonExport: Exporter<SensationComparison> = {
  profile: 'face-neck-sensation-comparison',
  parts: (context, { point, modality, result, reason }) => {
    const { coder } = context;
    const compared = context.about('sensation', point);
    return {
      code: coder.concept(
        'items',
        'sensation-comparison',
        `${coder.display('items', 'sensation-comparison')}: ${coder.display('testPoints', point)}`,
      ),
      ...(reason === undefined
        ? { value: { valueCodeableConcept: coder.concept('values', `comparison.${result}`) } }
        : { dataAbsentReason: absentReason(context, reason) }),
      ...(compared.length > 0 && {
        derivedFrom: compared.map((key) => context.reference(resourceName.statement(key))),
      }),
      components: [
        codedComponent(context, 'test-point', coder.concept('testPoints', point)),
        codedComponent(context, 'modality', coder.concept('modalities', modality)),
      ],
    };
  },
};
