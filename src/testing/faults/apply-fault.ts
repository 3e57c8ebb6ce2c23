import { createRandom } from '../random.ts';
import { bundleFaults } from './bundle.ts';
import { documentFaults } from './document.ts';
import { cardinalityFaults } from './elements/cardinality.ts';
import { codeFaults } from './elements/codes.ts';
import { dataTypeFaults } from './elements/data-types.ts';
import { dateFaults } from './elements/dates.ts';
import { extensionFaults } from './elements/extensions.ts';
import { invariantFaults } from './elements/invariants.ts';
import { narrativeFaults } from './elements/narrative.ts';
import { quantityFaults } from './elements/quantities.ts';
import { structureFaults } from './elements/structure.ts';
import type { Fault, Mutant } from './fault.ts';
import { identityFaults } from './identity.ts';
import { jsonTextFaults } from './json-text.ts';
import { referenceFaults } from './references.ts';

export type { Fault, FaultArea, FaultRule, Mutant } from './fault.ts';

/** Every kind of single fault, by area. */
export const faults: readonly Fault[] = [
  ...structureFaults,
  ...cardinalityFaults,
  ...dataTypeFaults,
  ...dateFaults,
  ...quantityFaults,
  ...codeFaults,
  ...invariantFaults,
  ...referenceFaults,
  ...identityFaults,
  ...bundleFaults,
  ...narrativeFaults,
  ...extensionFaults,
  ...documentFaults,
  ...jsonTextFaults,
];

const byId: ReadonlyMap<string, Fault> = new Map(faults.map((fault) => [fault.id, fault]));

/** The ids of all faults, in the order of {@link faults}. */
export const faultIds: readonly string[] = [...byId.keys()];

/**
 * Copies a bundle with one fault in it. The same arguments give the same text.
 *
 * @param id One of `faultIds`.
 * @param bundle A bundle that conforms, as plain data.
 * @param seed A whole number that chooses the place of the fault.
 * @returns The copy; undefined where the bundle has no place for the fault.
 * @throws {TypeError} Where no fault has that id.
 * @example
 * const mutants = faultIds.map((id) => applyFault(id, bundle, 7));
 */
export function applyFault(id: string, bundle: object, seed: number): Mutant | undefined {
  const fault = byId.get(id);
  if (fault === undefined) {
    throw new TypeError(`cannot apply a fault: expected one of faultIds, got ${id}`);
  }
  return fault.apply(bundle, createRandom(seed));
}
