/** The part of JSON Schema that HL7's files and the corrected ones use. */
export interface SchemaNode {
  $ref?: string;
  type?: string;
  pattern?: string;
  minLength?: number;
  minimum?: number;
  maximum?: number;
  enum?: readonly string[];
  const?: string;
  items?: SchemaNode;
  minItems?: number;
  description?: string;
  if?: SchemaNode;
  else?: SchemaNode;
  required?: string[];
  discriminator?: { propertyName: string };
  oneOf?: SchemaNode[];
}

export interface Definition extends SchemaNode {
  properties?: Record<string, SchemaNode>;
  additionalProperties?: boolean;
  minProperties?: number;
  allOf?: SchemaNode[];
}

export type Definitions = Record<string, Definition>;

/** `#/definitions/Period` names `Period`. */
export function refName(node: SchemaNode | undefined): string | undefined {
  return node?.$ref?.replace('#/definitions/', '');
}

/** Primitive types of FHIR begin with a small letter, all others with a capital. */
export function isPrimitiveName(name: string): boolean {
  return /^[a-z]/.test(name);
}
