import type { CodeableConcept, Observation } from 'fhir/r4.js';
import { quantity } from '../../fhir/quantity.ts';
import type { Measurement } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import {
  absentReason,
  codedComponent,
  flagComponent,
  observationOf,
  textComponent,
} from '../observation.ts';

/** The value as a quantity in UCUM, every reading as a component, no range of reference. */
export function measurementObservation(
  context: ExportContext,
  measurement: Measurement,
): Observation {
  const { coder } = context;
  const { value, unit, comparator, unusable } = measurement;
  return observationOf(context, measurement, {
    code: measureConcept(context, measurement),
    bodySite: bodySite(context, measurement.region, measurement.side),
    ...(value !== undefined && { value: { valueQuantity: quantity(value, unit, comparator) } }),
    ...(unusable !== undefined && { dataAbsentReason: absentReason(context, unusable) }),
    methods: measurement.methods,
    focus: measurement.about === undefined ? [] : [measurement.about],
    components: [
      ...(measurement.place === undefined
        ? []
        : [textComponent(context, 'place', measurement.place)]),
      ...(measurement.readings ?? []).map((reading) => ({
        code: coder.concept('items', 'reading'),
        valueQuantity: quantity(reading, unit),
      })),
      ...(measurement.convention === undefined
        ? []
        : [
            codedComponent(
              context,
              'convention',
              coder.concept('values', `convention.${measurement.convention}`),
            ),
          ]),
      ...(measurement.conditions ?? []).map((code) =>
        codedComponent(context, 'measure-condition', coder.concept('measureConditions', code)),
      ),
      ...(measurement.estimated === undefined
        ? []
        : [flagComponent(context, 'estimated', measurement.estimated)]),
      // The unit would be lost with the value, and the reader needs it.
      ...(value === undefined && measurement.readings === undefined
        ? [textComponent(context, 'unit', unit)]
        : []),
    ],
  });
}

/** A code of the adopter's map may stand for the measure in one unit alone. */
function measureConcept({ coder }: ExportContext, { measure, unit }: Measurement): CodeableConcept {
  const { coding = [], text } = coder.concept('measures', measure);
  return { coding: [...coding, ...coder.unitCodings(measure, unit)], ...(text && { text }) };
}
