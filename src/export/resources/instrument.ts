import type { Device, Observation } from 'fhir/r4.js';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { quantity } from '../../fhir/quantity.ts';
import { escapeXhtml } from '../../fhir/xhtml.ts';
import type { Instrument } from '../../model/people.ts';
import type { ExportContext } from '../context.ts';
import { generated } from './narrative.ts';
import { finishObservation, startObservation, textComponent } from './observation.ts';

/** An instrument as a Device in R4 form; the version adapter turns it into R5's. */
export function deviceResource(context: ExportContext, instrument: Instrument): Device {
  const type = context.coder.concept('instruments', instrument.type);
  const property = properties(context, instrument).map(({ code, valueQuantity }) => ({
    type: code,
    valueQuantity: [valueQuantity],
  }));
  return {
    resourceType: 'Device',
    id: context.id(resourceName.device(instrument.key)),
    ...(context.narrative && {
      text: generated(
        `<p>${escapeXhtml([type.text, instrument.detail].filter(Boolean).join('; '))}</p>`,
      ),
    }),
    identifier: [context.statementIdentifier(partName.instrument(instrument.key))],
    ...(instrument.serial !== undefined && { serialNumber: instrument.serial }),
    type,
    ...(property.length > 0 && { property }),
    ...(instrument.detail !== undefined && { note: [{ text: instrument.detail }] }),
  };
}

/**
 * That an instrument was used: its Device stands beside, or the receiver holds it, and then this
 * observation says what the exam says of it.
 */
export function instrumentObservation(context: ExportContext, instrument: Instrument): Observation {
  const { coder } = context;
  const observation = startObservation(context, {
    id: context.id(resourceName.used(instrument.key)),
    key: partName.used(instrument.key),
    category: 'survey',
    code: coder.concept('items', 'instrument'),
  });
  observation.valueCodeableConcept = coder.concept('instruments', instrument.type);
  observation.device = context.device(instrument.key);
  if (instrument.reference === undefined) return finishObservation(context, observation);
  if (instrument.detail !== undefined) observation.note = [{ text: instrument.detail }];
  const components = [
    ...properties(context, instrument),
    ...(instrument.serial === undefined
      ? []
      : [textComponent(context, 'serial', instrument.serial)]),
  ];
  if (components.length > 0) observation.component = components;
  return finishObservation(context, observation);
}

function properties(
  { coder }: ExportContext,
  { magnification, resolution }: Instrument,
): { code: Observation['code']; valueQuantity: ReturnType<typeof quantity> }[] {
  return [
    ...(magnification === undefined
      ? []
      : [
          {
            code: coder.concept('items', 'magnification'),
            valueQuantity: quantity(magnification, '1'),
          },
        ]),
    ...(resolution === undefined
      ? []
      : [
          {
            code: coder.concept('items', 'resolution'),
            valueQuantity: quantity(resolution.value, resolution.unit, resolution.comparator),
          },
        ]),
  ];
}
