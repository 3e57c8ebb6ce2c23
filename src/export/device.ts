import type { Device } from 'fhir/r4.js';
import { partName } from '../fhir/part-names.ts';
import { quantity } from '../fhir/quantity.ts';
import { escapeXhtml } from '../fhir/xhtml.ts';
import type { Instrument } from '../model/people.ts';
import { type ExportContext, resourceName } from './context.ts';
import { generated } from './narrative.ts';

/** An instrument as a Device in R4 form; the version adapter turns it into R5's. */
export function deviceResource(context: ExportContext, instrument: Instrument): Device {
  const { coder } = context;
  const type = coder.concept('instruments', instrument.type);
  const property: Device['property'] = [];
  if (instrument.magnification !== undefined) {
    property.push({
      type: coder.concept('items', 'magnification'),
      valueQuantity: [quantity(instrument.magnification, '1')],
    });
  }
  if (instrument.resolution !== undefined) {
    const { value, unit, comparator } = instrument.resolution;
    property.push({
      type: coder.concept('items', 'resolution'),
      valueQuantity: [quantity(value, unit, comparator)],
    });
  }
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
