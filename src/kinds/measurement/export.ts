import type { CodeableConcept } from 'fhir/r4.js';
import type { ExportContext } from '../../export/context.ts';
import {
  absentReason,
  codedComponent,
  type Exporter,
  flagComponent,
  subjectConcept,
  textComponent,
} from '../../export/resources/observation.ts';
import { quantity } from '../../fhir/quantity.ts';
import type { Measurement } from './statement.ts';

/** The value as a quantity in UCUM, every reading as a component, no range of reference. */
export const measurementExport: Exporter<Measurement> = {
  profile: 'face-neck-measurement',
  parts: (context, measurement) => {
    const { coder } = context;
    const { value, unit, comparator, convention, unusable } = measurement;
    return {
      code: measureConcept(context, measurement),
      ...(value !== undefined && { value: { valueQuantity: quantity(value, unit, comparator) } }),
      ...(unusable !== undefined && { dataAbsentReason: absentReason(context, unusable) }),
      focus: measurement.about === undefined ? [] : [measurement.about],
      components: [
        ...(measurement.readings ?? []).map((reading) => ({
          code: coder.concept('items', 'reading'),
          valueQuantity: quantity(reading, unit),
        })),
        ...(convention === undefined
          ? []
          : [
              codedComponent(
                context,
                'convention',
                coder.concept('values', `convention.${convention}`),
              ),
            ]),
        ...(measurement.conditions ?? []).map((code) =>
          codedComponent(context, 'measure-condition', coder.concept('measureConditions', code)),
        ),
        ...(measurement.estimated === undefined
          ? []
          : [flagComponent(context, 'estimated', measurement.estimated)]),
        // Without a value the unit has this one place, whether there are readings or not.
        ...(value === undefined ? [textComponent(context, 'unit', unit)] : []),
      ],
    };
  },
};

/**
 * A code of the adopter's map may stand for the measure in one unit alone. Where there is no usable
 * value, dataAbsentReason says that what the code names has none, so a code wider than the measure
 * would say so of what was never tried: "size of pupil" of one diameter in dim light.
 * @see https://hl7.org/fhir/R4/observation-definitions.html#Observation.dataAbsentReason
 */
function measureConcept(context: ExportContext, measurement: Measurement): CodeableConcept {
  const { measure, unit, value } = measurement;
  const { coding = [], text } = subjectConcept(context, measurement);
  const ofUnit = context.coder.unitCodings(measure, unit, value === undefined);
  return { coding: [...coding, ...ofUnit], ...(text && { text }) };
}
