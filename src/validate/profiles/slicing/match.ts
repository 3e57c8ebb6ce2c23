import { isObject } from '../../walk/json.ts';

/**
 * Whether a value holds at least what a pattern says: every part of it, and each item of its lists
 * somewhere in the list.
 * @see https://hl7.org/fhir/R4/elementdefinition-definitions.html#ElementDefinition.pattern_x_
 */
export function fitsPattern(value: unknown, pattern: unknown): boolean {
  if (Array.isArray(pattern)) {
    return (
      Array.isArray(value) && pattern.every((item) => value.some((each) => fitsPattern(each, item)))
    );
  }
  if (!isObject(pattern)) return value === pattern;
  return (
    isObject(value) &&
    Object.keys(pattern).every(
      (name) => Object.hasOwn(value, name) && fitsPattern(value[name], pattern[name]),
    )
  );
}
