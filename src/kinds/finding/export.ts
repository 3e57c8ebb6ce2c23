import type { ObservationComponent } from 'fhir/r4.js';
import type { ExportContext } from '../../export/context.ts';
import {
  codedComponent,
  type Exporter,
  subjectConcept,
} from '../../export/resources/observation.ts';
import { quantity } from '../../fhir/quantity.ts';
import type { Attribute, Finding } from './statement.ts';

/**
 * The sign as code, and Present, Absent or Indeterminate as value.
 * @see https://hl7.org/fhir/R4/observation-example-vomiting.json.html (absent)
 */
export const findingExport: Exporter<Finding> = {
  profile: 'face-neck-finding',
  parts: (context, finding) => {
    const { coder } = context;
    const suspected = finding.certainty === 'suspected';
    return {
      code: subjectConcept(context, finding),
      value: {
        valueCodeableConcept: coder.concept(
          'values',
          suspected ? 'presence.suspected' : `presence.${finding.presence}`,
        ),
      },
      identifier:
        finding.tracking === undefined ? undefined : context.trackingIdentifier(finding.tracking),
      components: [
        ...(finding.certainty === 'confirmed'
          ? [codedComponent(context, 'certainty', coder.concept('values', 'certainty.confirmed'))]
          : []),
        ...(finding.attributes ?? []).map((attribute) => attributeComponent(context, attribute)),
      ],
    };
  },
};

function attributeComponent(
  { coder, catalogue }: ExportContext,
  { attribute, value }: Attribute,
): ObservationComponent {
  const code = coder.concept('attributes', attribute);
  if (typeof value === 'boolean') return { code, valueBoolean: value };
  if (typeof value === 'number') return { code, valueInteger: value };
  if (typeof value === 'object') {
    return { code, valueQuantity: quantity(value.value, value.unit, value.comparator) };
  }
  const row = catalogue.attributes.get(attribute)?.values?.find((known) => known.code === value);
  return row === undefined
    ? { code, valueString: value }
    : { code, valueCodeableConcept: coder.valueConcept('attributes', attribute, row) };
}
