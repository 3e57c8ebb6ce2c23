/** How sure a row is: its source was read, read second-hand, remembered, or is common practice. */
export type Evidence = 'read' | 'second-hand' | 'memory' | 'common-practice';

/** How a concept of ours relates to one of another system; the words are those of FHIR R4 ConceptMap. */
export type Relation = 'equivalent' | 'wider' | 'narrower' | 'relatedto';

/**
 * A concept of another code system. `wider`: the target means more than our concept.
 * What is present may be sent as an `equivalent` or a `wider` code; what is absent as an `equivalent`
 * one only, since no purulent discharge is not no discharge. `narrower` and `relatedto` are for
 * reading and searching, and are never sent in place of our concept.
 */
export interface Mapping {
  readonly system: 'snomed' | 'loinc';
  readonly code: string;
  readonly relation: Relation;
}

/** What every row of every table has. */
export interface Concept {
  readonly code: string;
  readonly display: string;
  readonly definition?: string;
  readonly maps?: readonly Mapping[];
  readonly source: string;
  readonly evidence: Evidence;
}

/**
 * Which sides a place or test can have.
 * `paired`: right, left or both, and one must be said. `crossing`: a region with a middle and two
 * sides, one must be said. `midline`: a side may be said as right or left of the midline.
 * `whole`: any side may be said, none must.
 */
export type Laterality = 'paired' | 'crossing' | 'midline' | 'whole';

/** A part of the exam that is told together, in the order of the body: a region group in FHIR. */
export interface Section extends Concept {
  readonly order: number;
}

export interface Region extends Concept {
  /** Code of the region above it; none at the root. */
  readonly parent?: string;
  readonly section: string;
  readonly laterality: Laterality;
  /** A group holds regions and is not itself examined. */
  readonly group?: true;
  /** Sensory supply in words, and the areas it names: V1, V2, V3, C2 ... */
  readonly innervation?: string;
  readonly areas?: readonly string[];
  /** Methods that this region takes. */
  readonly methods: readonly string[];
}

export interface FindingConcept extends Concept {
  /** Regions or groups where it can be found; none named means anywhere. */
  readonly regions: readonly string[];
  /** Signs with the same feature exclude each other at one place: septum midline, deviated right ... */
  readonly feature?: string;
  /** The sign is the usual appearance, so its presence is not an abnormality. */
  readonly usual?: true;
  /** Family of attributes that describe it. */
  readonly attributes?: string;
  /** It names a disease: stated only where the examiner asserts it. */
  readonly disorder?: true;
}

export interface Value {
  readonly code: string;
  readonly display: string;
  readonly usual?: true;
  readonly maps?: readonly Mapping[];
}

export interface AttributeConcept extends Concept {
  /** Family, such as `lesion` or `node`: findings name it in `attributes`. */
  readonly family: string;
  readonly type: 'code' | 'boolean' | 'count' | 'quantity';
  readonly values?: readonly Value[];
  /** UCUM unit of a quantity. */
  readonly unit?: string;
}

export interface TestPoint extends Concept {
  readonly group: 'sensation' | 'facial-movement' | 'movement' | 'function';
  readonly section: string;
  readonly region: string;
  readonly laterality: Laterality;
  readonly nerve?: string;
  readonly areas?: readonly string[];
  /** For `sensation`: codes of modalities.json that the point takes. */
  readonly modalities?: readonly string[];
  /** For the others: codes of test-results.json that it can give. */
  readonly results?: readonly string[];
  /** What the patient is asked to do. */
  readonly instruction?: string;
}

/** Results and grades: `usual` is a normal result, `untested` says that there is none. */
export interface ResultConcept extends Concept {
  readonly usual?: true;
  readonly untested?: true;
  /** Modalities that can give this sensation result; none named means all. */
  readonly modalities?: readonly string[];
}

export interface Modality extends Concept {
  /** Code of methods.json that the modality is a case of. */
  readonly method: string;
}

export interface ReferenceRange {
  readonly low?: string;
  readonly high?: string;
  readonly text?: string;
  readonly population: string;
  readonly source: string;
  readonly evidence: Evidence;
}

export interface Measure extends Concept {
  readonly region: string;
  readonly laterality: Laterality;
  readonly type: 'quantity' | 'count' | 'score' | 'coded';
  /** Canonical UCUM unit, in which the library computes. */
  readonly unit: string;
  /** UCUM units accepted besides it. */
  readonly units?: readonly string[];
  readonly ranges?: readonly ReferenceRange[];
  readonly threshold?: string;
  /** The row is a range or cut-off of that measure and not a measure of its own. */
  readonly rangeOf?: string;
  /** It is recorded as a scale score under that scale. */
  readonly scale?: string;
  /** It is recorded as that test of test-points.json. */
  readonly test?: string;
  /** Codes of a `coded` measure. */
  readonly values?: readonly Value[];
}

export interface Scale extends Concept {
  readonly versions: readonly string[];
  readonly type: 'ordinal' | 'sum';
  readonly region: string;
  readonly laterality: Laterality;
  readonly grades?: readonly (Value & { readonly rank: number; readonly definition: string })[];
  readonly items?: readonly (Value & { readonly weight: number; readonly max?: number })[];
  readonly max?: number;
  readonly licence: string;
}

export interface Condition extends Concept {
  readonly values?: readonly Value[];
}

export interface ReasonConcept extends Concept {
  /** FHIR data-absent-reason code that it is exported with. */
  readonly dataAbsentReason: string;
}

export interface SymptomConcept extends Concept {
  /** Group it is asked with. */
  readonly group: string;
  readonly section: string;
}

/**
 * Signs to look for, ready as a list. What was looked for and not found is stated as absent; a sign
 * marked `usual` in findings.json is stated as present, such as pupils equal.
 */
export interface NegativeSet extends Concept {
  readonly section: string;
  readonly entries: readonly { readonly finding: string; readonly regions: readonly string[] }[];
  /** Points at which both sides were touched and felt equal. */
  readonly comparisons?: readonly {
    readonly point: string;
    readonly modalities: readonly string[];
  }[];
  /** Movements and function tests, each with the result that says there is nothing amiss. */
  readonly tests?: readonly { readonly test: string; readonly result: string }[];
}

/** What a protocol asks for; each list holds codes. `full` of a group means every region below it. */
export interface Protocol extends Concept {
  readonly version: string;
  readonly regions: readonly { readonly region: string; readonly methods: readonly string[] }[];
  readonly points?: readonly { readonly point: string; readonly modalities: readonly string[] }[];
  readonly tests?: readonly string[];
  readonly measures?: readonly string[];
  /** What this protocol leaves out although a reader might expect it; printed in the record. */
  readonly outside?: readonly string[];
}

/** One SNOMED CT concept that our tables point to. */
export interface SnomedConcept {
  readonly id: string;
  /**
   * Fully specified name, verbatim from the published file. The package holds none of concepts outside
   * the free set.
   */
  readonly fsn?: string;
  /** The file prints a synonym only, and `fsn` holds that; never so in the Global Patient Set. */
  readonly synonym?: true;
  /** In the Global Patient Set 2020-09 (CC BY 4.0), or outside it. */
  readonly set: 'gps-2020-09' | 'outside';
  /** Where the id was read. */
  readonly source: string;
}

export interface LoincTerm {
  readonly code: string;
  /** Name as printed in the published file; none where its exact wording was not seen. */
  readonly display?: string;
  readonly source: string;
}

/** A code of a published FHIR or HL7 terminology code system. */
export interface Hl7Concept {
  readonly system: string;
  readonly code: string;
  readonly display: string;
}

/** Head of each file in /terminology. */
export interface Table<Row> {
  readonly table: string;
  readonly title: string;
  readonly version: string;
  readonly licence: string;
  readonly concepts: readonly Row[];
}

/** A row as shipped in code: what looks-ups and exports need. Sources stay in the JSON tables. */
export type Lean<Row> = Omit<Row, 'source' | 'evidence' | 'definition'> & {
  /** Code system of a row that an adopter added; the library's own where left out. */
  readonly system?: string;
};
