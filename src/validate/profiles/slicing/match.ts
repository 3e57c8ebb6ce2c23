import { isObject } from '../../walk/json.ts';

/** Whether a value is the same as a fixed one, in all that it says. */
export function isSame(value: unknown, fixed: unknown): boolean {
  if (Array.isArray(fixed)) {
    return (
      Array.isArray(value) &&
      value.length === fixed.length &&
      fixed.every((item, at) => isSame(value[at], item))
    );
  }
  if (!isObject(fixed)) return value === fixed;
  if (!isObject(value)) return false;
  const names = Object.keys(fixed);
  return (
    names.length === Object.keys(value).length &&
    names.every((name) => Object.hasOwn(value, name) && isSame(value[name], fixed[name]))
  );
}

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
