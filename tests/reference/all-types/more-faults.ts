import { containedFaults, extensionFaults } from './more-faults/contained-and-extensions.ts';
import { dataTypeFaults } from './more-faults/data-types.ts';
import { everyResourceFaults } from './more-faults/every-resource.ts';
import { narrativeFaults } from './more-faults/narratives.ts';
import { primitiveFaults } from './more-faults/primitives.ts';
import { propertyFaults } from './more-faults/properties.ts';
import type { NamedFault } from './places.ts';

/**
 * Faults in kinds that the catalogue of bundles (src/testing/faults) and faults.ts do not have. The
 * cases follow from their order.
 */
export const moreFaults: readonly NamedFault[] = [
  ...dataTypeFaults,
  ...primitiveFaults,
  ...propertyFaults,
  ...everyResourceFaults,
  ...narrativeFaults,
  ...containedFaults,
  ...extensionFaults,
];
