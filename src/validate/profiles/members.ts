import { choiceName, isObject, type JsonObject } from '../walk/json.ts';
import type { ProfileNode } from './compile.ts';

/** One value of an element, where it stands below its holder, and the type that its name tells. */
export interface Member {
  /** `undefined` or `null` where an extension stands in the place of a primitive. */
  readonly value: unknown;
  /** The id and extensions of a primitive. */
  readonly extra: unknown;
  readonly path: readonly (string | number)[];
  readonly type: string | undefined;
}

/** The values of an element in an object, however many there are. */
export function membersOf(holder: JsonObject, node: ProfileNode): Member[] {
  const name = node.isChoice ? choiceName(holder, node.name) : node.name;
  if (name === undefined) return [];
  const value = own(holder, name);
  const extra = own(holder, `_${name}`);
  const type = node.isChoice ? choiceType(name.slice(node.name.length), node) : undefined;
  if (Array.isArray(value)) {
    const extras: readonly unknown[] = Array.isArray(extra) ? extra : [];
    return value.map((each: unknown, at) => {
      return { value: each, extra: extras[at], path: [name, at], type };
    });
  }
  const there = value !== undefined || isObject(extra);
  return there ? [{ value, extra, path: [name], type }] : [];
}

/** A profile can name anything, also what every object inherits. */
function own(holder: JsonObject, name: string): unknown {
  return Object.hasOwn(holder, name) ? holder[name] : undefined;
}

/** `valueString` has the type string, `valueQuantity` the type Quantity. */
function choiceType(suffix: string, { types }: ProfileNode): string {
  const name = small(suffix);
  return types.some(({ code }) => code === name) || primitives.has(name) ? name : suffix;
}

/** Suffixes of choices begin with a capital, the names of primitive types do not. */
export function small(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** @see https://hl7.org/fhir/R5/datatypes.html#primitive */
export const primitives: ReadonlySet<string> = new Set(
  'base64Binary boolean canonical code date dateTime decimal id instant integer integer64 markdown oid positiveInt string time unsignedInt uri url uuid'.split(
    ' ',
  ),
);
