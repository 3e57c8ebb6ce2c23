import type { FhirVersion } from '../../fhir/version.ts';
import type { Severity } from '../../issues/issue.ts';
import { isObject, type JsonObject } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';

/** One published invariant. */
export interface Invariant {
  /** As published: `obs-6`. */
  readonly key: string;
  /** Versions that have it with this meaning. */
  readonly versions: readonly FhirVersion[];
  readonly severity: Severity;
  /** What is wrong where it does not hold. */
  readonly says: string;
  /** True also of a value that is not of the shape that it looks at. */
  holds(value: unknown, scope: Scope): boolean;
}

type Rule = readonly [
  key: string,
  says: string,
  holds: (object: JsonObject, scope: Scope) => boolean,
];

export const beforeR5: readonly FhirVersion[] = ['R4', 'R4B'];

/** Invariants on objects, by key, with what is said where they do not hold. */
export function rules(
  versions: readonly FhirVersion[],
  rows: readonly Rule[],
  severity: Severity = 'error',
): Invariant[] {
  return rows.map(([key, says, holds]) => ({
    key,
    versions,
    severity,
    says,
    holds: (value, scope) => !isObject(value) || holds(value, scope),
  }));
}
