/**
 * Forms of the generated tables: what HL7's definitions of one FHIR version say about the types that
 * the library holds.
 */

/**
 * One element. As text it is the type alone, with `*` after it where it is a list, and `!` where it
 * must be there: `code!`, `CodeableConcept*`, `Bundle.link*!`. Parts of a resource are types of their
 * own: `Observation.component`.
 */
export type ElementRow = string | DetailedElement;

export interface DetailedElement {
  /** Type, with `*` for a list and `!` for a required element; none for a choice. */
  readonly is?: string;
  /** Types of an element such as `value[x]`, whose property in JSON is `valueQuantity` and so on. */
  readonly choice?: readonly string[];
  /** Of a choice: one of its properties must be there. */
  readonly required?: true;
  /** Types of resources that a reference may point to; any where there are none. */
  readonly to?: readonly string[];
  /** A list has at most so many; unbounded where it is not told. */
  readonly max?: number;
  /** Value set that the code must come from. */
  readonly codes?: string;
  /** Value set that the code must come from where it has a fitting one. */
  readonly usualCodes?: string;
  /** Value set beyond which no code can come, where there is one at all. */
  readonly outerCodes?: string;
  /** Keys of the invariants of this element, beside those of its type. */
  readonly rules?: readonly string[];
}

export interface TypeRow {
  /** Type whose elements and rules it has too: DomainResource, BackboneElement. */
  readonly base?: string;
  /** Keys of the invariants of the type. */
  readonly rules?: readonly string[];
  /** All elements but `id` and `extension`, which every type has. */
  readonly elements: Readonly<Record<string, ElementRow>>;
}

export type TypeTable = Readonly<Record<string, TypeRow>>;

export interface ExtensionRow {
  /** Where it may stand: element paths and types; `extension <url>` inside another one. */
  readonly on: readonly string[];
  /** Types of its value; none where it holds extensions only. */
  readonly value?: readonly string[];
  readonly codes?: string;
  readonly to?: readonly string[];
  /** It changes the meaning of what it stands on, and so must be a modifierExtension. */
  readonly modifier?: true;
  /** Last version of FHIR that it may be used in, where that is an earlier one: `4.3`. */
  readonly until?: string;
  /** Extensions that it holds, by their url. */
  readonly parts?: Readonly<Record<string, ExtensionPart>>;
}

export interface ExtensionPart {
  readonly min?: number;
  /** None: any number. */
  readonly max?: number;
  readonly value?: readonly string[];
  readonly codes?: string;
  readonly parts?: Readonly<Record<string, ExtensionPart>>;
}

/** By canonical URL; those of HL7 without `http://hl7.org/fhir/StructureDefinition/`. */
export type ExtensionTable = Readonly<Record<string, ExtensionRow>>;

/** Displays by code; several where the published editions differ or list designations. */
export type CodeTable = Readonly<Record<string, string | readonly string[]>>;

/** By canonical URL: every code of the system. */
export type CodeSystemTable = Readonly<Record<string, CodeTable>>;

/** By canonical URL: codes of each system, or `all` of a system that is held. */
export type ValueSetTable = Readonly<
  Record<string, Readonly<Record<string, 'all' | readonly string[]>>>
>;

/** What the text or number of a primitive type must be like. */
export interface PrimitiveRow {
  readonly type: 'string' | 'number' | 'integer' | 'boolean';
  /** A regular expression on the whole text. */
  readonly pattern?: string;
  readonly minLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
}

/** By name of the primitive type. */
export type PrimitiveTable = Readonly<Record<string, PrimitiveRow>>;

/**
 * Published invariants that no function of the library holds, as FHIRPath by key; where a key stands
 * for several, by key and place: `inv-1 of Account.coverage`.
 */
export type PublishedTable = Readonly<
  Record<string, readonly [severity: 'error' | 'warning', expression: string]>
>;
