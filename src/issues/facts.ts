import type { RuleTitleId } from './english/rules.ts';
import type { Form, JsonKind } from './forms.ts';

/**
 * Every fact that an issue can carry, by name. A sentence names its facts in braces, `{maximum}`;
 * `{near?}` is one that may be left out. No fact ever holds a value from a patient's record: codes,
 * names and bounds come from tables, schemas, mappings and profiles.
 */
export interface FactTypes {
  /** The form that would have been accepted. */
  readonly form: Form;
  /** What kind of JSON value stands there. */
  readonly found: JsonKind;
  /** Codes, names or words that could stand there. */
  readonly codes: readonly string[];
  /** Names or words that belong together, all of them. */
  readonly names: readonly string[];
  /** Unit codes of UCUM that could stand there. */
  readonly units: readonly string[];
  /** FHIR types that could stand there. */
  readonly types: readonly string[];
  /** Keys of the other statements it is about. */
  readonly keys: readonly string[];
  /** A code of the catalogue, a mapping or a published table. */
  readonly code: string;
  /** Table of the catalogue: `regions`. */
  readonly table: string;
  /** The known name most like the one given. */
  readonly near: string;
  /** Least and greatest value or number of things, both included; decimals as text. */
  readonly minimum: number | string;
  readonly maximum: number | string;
  /** How many there are, and of how many. */
  readonly count: number | string;
  readonly total: number;
  /** UCUM code. */
  readonly unit: string;
  /** Kind of statement. */
  readonly kind: string;
  /** Name of a property, field, column, option or part of a mapping. */
  readonly property: string;
  /** FHIR type or type of the model. */
  readonly type: string;
  /** Name or URI of a code system. */
  readonly system: string;
  /** Version of FHIR, of a table row, of a protocol. */
  readonly version: string;
  /** Canonical URL or fragment of one. */
  readonly url: string;
  /** A character as U+0000. */
  readonly character: string;
  /** Status of the record, and the step that it does not allow. */
  readonly status: string;
  readonly step: string;
  /** XHTML or XML element. */
  readonly element: string;
  /** Key of a published rule, with its text as published, which is not translated. */
  readonly key: string;
  readonly says: string;
  /** Consistency rule of the checks. */
  readonly ruleId: RuleTitleId;
  /** Name of a character set. */
  readonly encoding: string;
  /** Error name of the operating system: `EACCES`. */
  readonly error: string;
}

/** What is said in one case: the message, then what is expected; of several the first whose facts are there. */
export type Sentence = string | readonly [message: string, ...expected: string[]];

/** Sentences by issue code and reason. */
export type SentenceTable = Readonly<Record<string, Readonly<Record<string, Sentence>>>>;

type NamesIn<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | NamesIn<Rest>
  : never;

type NamesOf<S> = S extends string
  ? NamesIn<S>
  : S extends readonly string[]
    ? NamesIn<S[number]>
    : never;

type Optional<Name> = Name extends `${infer Inner}?` ? Inner : never;

/** Facts that one sentence needs, and those that it can do without. */
type FactsIn<S> = {
  readonly [Name in NamesOf<S> & keyof FactTypes]: FactTypes[Name];
} & {
  readonly [Name in Optional<NamesOf<S>> & keyof FactTypes]?: FactTypes[Name] | undefined;
};

type ReasonsIn<Sentences> = {
  [Reason in keyof Sentences & string]: { readonly reason: Reason } & FactsIn<Sentences[Reason]>;
}[keyof Sentences & string];

/** Facts of an issue with this code, one member for each reason. */
export type FactsFor<Table, Code> = Code extends keyof Table ? ReasonsIn<Table[Code]> : never;

/** Names in the sentences of a table that are not facts: `never`, where the table is sound. */
export type UnknownFacts<Table> = {
  [Code in keyof Table]: {
    [Reason in keyof Table[Code]]: Exclude<
      NamesOf<Table[Code][Reason]> extends infer Name
        ? Name extends `${infer N}?`
          ? N
          : Name
        : never,
      keyof FactTypes
    >;
  }[keyof Table[Code]];
}[keyof Table];
