/**
 * The clinic of the examples: a health station for people of the port and of the vineyards above it.
 * Place, people and numbers are invented.
 */
import type { Examiner, Identifier, Instrument, Organization } from '../../src/index.ts';

const base = 'https://ravelport-health.example';

export const clinic: Organization = {
  name: 'Ravelport Health Station, Harbour & Vineyards',
  identifiers: [{ system: `${base}/sites`, value: 'RHS-1' }],
};

export const physician: Examiner = {
  key: 'physician',
  name: { family: 'Haldrake', given: ['Sunniva'], prefix: 'Dr' },
  role: 'occupational physician',
  identifiers: [{ system: `${base}/staff`, value: '0017' }],
};

export const nurse: Examiner = {
  key: 'nurse',
  name: { family: 'Brève', given: ['Ottokar'] },
  role: 'nurse practitioner',
  identifiers: [{ system: `${base}/staff`, value: '0042' }],
};

export function patientNumber(value: string): readonly [Identifier] {
  return [{ system: `${base}/patients`, value, use: 'usual' }];
}

export function visitNumber(value: string): readonly [Identifier] {
  return [{ system: `${base}/visits`, value }];
}

export function picture(file: string): string {
  return `${base}/pictures/${file}`;
}

export const loupe: Instrument = {
  key: 'loupe',
  type: 'loupe',
  magnification: '2.5',
  detail: 'Worn on the head, with its own white light',
};

export const dermatoscope: Instrument = {
  key: 'dermatoscope',
  type: 'dermatoscope',
  magnification: '10',
  detail: 'Polarised light',
  serial: 'D-2291',
};

export const otoscope: Instrument = {
  key: 'otoscope',
  type: 'otoscope',
  magnification: '3.0',
  detail: 'Speculum of 4 mm',
};

/** Half a millimetre can be read off, so lengths below are stated to half a millimetre. */
export const ruler: Instrument = {
  key: 'ruler',
  type: 'ruler-caliper',
  resolution: { value: '0.5', unit: 'mm' },
};

export const penlight: Instrument = { key: 'penlight', type: 'penlight' };
export const headlight: Instrument = { key: 'headlight', type: 'headlight' };
export const speculum: Instrument = { key: 'speculum', type: 'nasal-speculum' };
export const wisp: Instrument = { key: 'wisp', type: 'cotton-wisp' };
export const neurotip: Instrument = {
  key: 'neurotip',
  type: 'neurotip',
  detail: 'Single use, thrown away after this exam',
};
export const fork: Instrument = { key: 'fork', type: 'tuning-fork', detail: '512 Hz' };
export const stethoscope: Instrument = { key: 'stethoscope', type: 'stethoscope' };
export const mirror: Instrument = { key: 'mirror', type: 'cold-mirror' };
export const water: Instrument = { key: 'water', type: 'glass-of-water' };
export const camera: Instrument = {
  key: 'camera',
  type: 'camera',
  detail: 'Scale bar and side label in each picture',
};
