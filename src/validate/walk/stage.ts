import type { Property } from '../elements/definitions.ts';
import type { JsonObject } from './json.ts';
import type { Scope } from './scope.ts';

/** Looks at one object of a type; `property` is what it stands under, none for a whole resource. */
export type ObjectCheck = (value: JsonObject, scope: Scope, property: Property) => void;

/** Looks at one primitive value; `holder` is the object that it is a property of. */
export type PrimitiveCheck = (
  value: string | number | boolean,
  scope: Scope,
  property: Property,
  holder: JsonObject,
) => void;

/** What a stage looks at while a resource is walked over once for all stages. */
export interface Stage {
  /** By type, such as `Coding` or `Bundle.entry`. */
  readonly objects?: Readonly<Record<string, ObjectCheck>>;
  readonly primitives?: Readonly<Record<string, PrimitiveCheck>>;
  /** Properties whose primitives it looks at; all where it does not say. */
  readonly appliesTo?: (property: Property) => boolean;
}
