import type { Observation, ObservationComponent } from 'fhir/r4.js';
import { presenceInterpretation } from '../../fhir/observation-codes.ts';
import { quantity } from '../../fhir/quantity.ts';
import type { Attribute, Finding } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import { codedComponent, observationOf, textComponent } from '../observation.ts';

/**
 * The sign as code, and Present, Absent or Indeterminate as value.
 * @see https://hl7.org/fhir/R4/observation-example-vomiting.json.html (absent)
 */
export function findingObservation(context: ExportContext, finding: Finding): Observation {
  const { coder } = context;
  const suspected = finding.certainty === 'suspected';
  const answer = suspected ? 'presence.suspected' : `presence.${finding.presence}`;
  return observationOf(context, finding, {
    code:
      finding.presence === 'present' && !suspected
        ? coder.concept('findings', finding.finding)
        : coder.strictConcept('findings', finding.finding),
    bodySite: bodySite(context, finding.region, finding.side),
    value: { valueCodeableConcept: coder.concept('values', answer) },
    interpretation: suspected ? 'IND' : presenceInterpretation[finding.presence],
    methods: finding.methods,
    identifier:
      finding.tracking === undefined ? undefined : context.trackingIdentifier(finding.tracking),
    components: [
      ...(finding.place === undefined ? [] : [textComponent(context, 'place', finding.place)]),
      ...(finding.certainty === 'confirmed'
        ? [codedComponent(context, 'certainty', coder.concept('values', 'certainty.confirmed'))]
        : []),
      ...(finding.attributes ?? []).map((attribute) => attributeComponent(context, attribute)),
    ],
  });
}

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
