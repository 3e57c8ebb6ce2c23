import type { Device, Observation } from 'fhir/r4.js';
import { identityIdentifier } from '../../fhir/names/identity.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { quantity } from '../../fhir/quantity.ts';
import type { Instrument } from '../../model/people.ts';
import type { ExportContext } from '../context.ts';
import { summary } from './narrative.ts';
import { finishObservation, startObservation, textComponent } from './observation.ts';

/**
 * The Devices of an exam in R4 form; the version adapter turns them into R5's. A Device is one
 * instrument with a serial number, or else a type of instrument, and is the same in every exam.
 */
export function deviceResources(context: ExportContext): Device[] {
  const devices = new Map<string, Device>();
  for (const instrument of context.exam.instruments ?? []) {
    if (context.outside('device', instrument)) continue;
    const device = deviceResource(context, instrument);
    devices.set(device.id ?? '', device);
  }
  return [...devices.values()];
}

function deviceResource(context: ExportContext, instrument: Instrument): Device {
  const { serial } = instrument;
  const type = context.coder.concept('instruments', instrument.type);
  const id = context.id(resourceName.device(instrument.key));
  return {
    resourceType: 'Device',
    id,
    ...summary(context, [type.text, serial]),
    identifier: [identityIdentifier(id)],
    ...(serial !== undefined && { serialNumber: serial }),
    type,
  };
}

/** That an instrument was used, and what the exam says of it: magnification, detail and the like. */
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
