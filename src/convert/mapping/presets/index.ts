import { isPlainObject } from '../../../data/plain-data.ts';
import { builtInCatalogue, type Catalogue } from '../../../terminology/catalogue.ts';
import { cCda } from './c-cda.ts';
import { mdm, oru } from './hl7v2.ts';
import type { PresetName } from './names.ts';
import { practiceCsv } from './practice-csv.ts';

/** What each preset says; a mapping that uses it says the rest. Words are codes of the catalogue. */
const presets: { readonly [Name in PresetName]: (catalogue: Catalogue) => object } = {
  'c-cda': cCda,
  'hl7v2-oru': oru,
  'hl7v2-mdm': mdm,
  'practice-csv': practiceCsv,
};

/** Names of the presets. */
export const presetNames: readonly PresetName[] = Object.keys(presets) as PresetName[]; // keys of a literal

/** The preset as a mapping, without what only its user knows. */
export function presetMapping(name: PresetName, catalogue: Catalogue = builtInCatalogue): object {
  return presets[name](catalogue);
}

/**
 * The mapping with its preset below it and no longer named; anything that is not a mapping, or that names
 * no preset, is given back as it is.
 */
export function withPreset(value: unknown, catalogue: Catalogue): unknown {
  if (!isPlainObject(value)) return value;
  const { use, ...own } = value;
  const name = presetNames.find((known) => known === use);
  return name === undefined ? value : joined(presetMapping(name, catalogue), own);
}

function joined(below: unknown, above: unknown): unknown {
  if (!isPlainObject(below) || !isPlainObject(above)) return above;
  const result: { [name: string]: unknown } = { ...below };
  for (const [name, value] of Object.entries(above)) {
    result[name] = Object.hasOwn(below, name) ? joined(below[name], value) : value;
  }
  return result;
}
