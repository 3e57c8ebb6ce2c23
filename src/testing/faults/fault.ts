import type { OperationOutcomeIssue } from 'fhir/r4.js';
import { DECIMAL_TEXT } from '../../fhir/json/decimal.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { type FhirVersion, fhirVersions } from '../../fhir/version.ts';
import type { Severity } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Random } from '../random.ts';

/** What of a bundle a fault touches; the catalogue has a file for each. */
export type FaultArea =
  | 'structure'
  | 'cardinality'
  | 'data-type'
  | 'date'
  | 'quantity'
  | 'code'
  | 'invariant'
  | 'reference'
  | 'identity'
  | 'bundle'
  | 'narrative'
  | 'extension'
  | 'document'
  | 'json';

/** The rule that a fault breaks: its key where the specification gives one, and where it is written. */
export interface FaultRule {
  /** Name of the rule: an invariant key, or the element. */
  readonly key: string;
  /** Where the specification states it. */
  readonly url: string;
}

/** One way in which a bundle can be wrong in one place. */
export interface Fault {
  readonly id: string;
  readonly area: FaultArea;
  /** What is wrong afterwards. */
  readonly title: string;
  /** The rule that it breaks. */
  readonly rule: FaultRule;
  /** `error` where the specification says SHALL, `warning` where it says SHOULD. */
  readonly severity: Severity;
  /** Versions of FHIR in which it is a fault. */
  readonly versions: readonly FhirVersion[];
  /** An OperationOutcome that reports the fault says this of it. */
  readonly expected: {
    readonly severity: Severity;
    /** @see https://hl7.org/fhir/R4/valueset-issue-type.html */
    readonly code: OperationOutcomeIssue['code'];
  };
  /** A copy of the bundle with the fault; undefined where the bundle has no place for it. */
  apply(bundle: object, random: Random): Mutant | undefined;
}

/** A bundle with one fault. */
export interface Mutant {
  /** What a sender would send. */
  readonly text: string;
  /** The same as data; none where the fault lies in the text, which no object can hold. */
  readonly resource?: object;
  /** Where the fault lies; none where it lies in the text. */
  readonly path?: Path;
}

export type Json = null | boolean | number | string | Json[] | JsonObject;
export type JsonObject = { [property: string]: Json };

interface FaultHead {
  readonly id: string;
  readonly title: string;
  readonly rule: readonly [key: string, url: string];
  readonly code: OperationOutcomeIssue['code'];
  /** Default `error`. */
  readonly severity?: Severity;
  /** Default all. */
  readonly versions?: readonly FhirVersion[];
}

/** Plants the fault in a bundle that it may change; gives the place, or nothing where it has none. */
export type Plant = (bundle: JsonObject, random: Random) => Path | undefined;

export type DataFault = FaultHead & { readonly plant: Plant };

export type TextFault = FaultHead & {
  /** The text with the fault; undefined where it has no place for it. */
  readonly plant: (text: string, random: Random) => string | undefined;
};

/** Faults of one area that can be shown as data. */
export function dataFaults(area: FaultArea, rows: readonly DataFault[]): Fault[] {
  return rows.map(({ plant, ...head }) => ({
    ...described(area, head),
    apply: (bundle, random) => {
      // A bundle is plain data; what is planted in the copy is plain data too.
      const resource = copied(bundle) as JsonObject;
      const path = plant(resource, random);
      return path === undefined ? undefined : { text: toJson(resource), resource, path };
    },
  }));
}

/** Faults that only a text can have: two properties of one name, a comma too many. */
export function textFaults(area: FaultArea, rows: readonly TextFault[]): Fault[] {
  return rows.map(({ plant, ...head }) => ({
    ...described(area, head),
    apply: (bundle, random) => {
      const text = plant(toJson(bundle), random);
      return text === undefined ? undefined : { text };
    },
  }));
}

function described(area: FaultArea, head: FaultHead): Omit<Fault, 'apply'> {
  const { id, title, rule, code, severity = 'error', versions = fhirVersions } = head;
  const [key, url] = rule;
  return {
    id,
    area,
    title,
    rule: { key, url },
    severity,
    versions,
    expected: { severity, code },
  };
}

/** A deep copy that keeps how decimals were written, which structuredClone does not. */
function copied(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copied);
  if (typeof value !== 'object' || value === null) return value;
  const copy: Record<string | symbol, unknown> = {};
  for (const [property, inner] of Object.entries(value)) copy[property] = copied(inner);
  const texts: unknown = Object.getOwnPropertyDescriptor(value, DECIMAL_TEXT)?.value;
  if (texts !== undefined) copy[DECIMAL_TEXT] = texts;
  return copy;
}
