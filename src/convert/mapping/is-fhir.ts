import { isPlainObject } from '../../data/plain-data.ts';
import type { AnyMapping, WrittenMapping } from './mapping.ts';

/** Whether a mapping is one of FHIR, as far as its source says so. */
export function isFhirMapping(value: unknown): boolean {
  if (!isPlainObject(value)) return false;
  const { source } = value;
  return isPlainObject(source) && source['syntax'] === 'fhir';
}

/** Whether a mapping says what fields mean, so that an export can be held to it. */
export function isFieldMapping(mapping: AnyMapping): mapping is WrittenMapping {
  return !isFhirMapping(mapping);
}
