import type { Issue, Severity } from '../issues/issue.ts';
import type { Path } from '../issues/path.ts';
import type { ClinicFile } from './clinic-file.ts';
import { issue } from './issue.ts';

/** What stands in a clinic file where nobody has decided yet. */
export const UNDECIDED = 'undecided';

/** What a clinic can leave undecided. */
export type UndecidedPart = 'identity' | 'system' | 'snomed' | 'language' | 'bundle' | 'rule-sets';

interface Place {
  readonly path: Path;
  readonly value: (file: ClinicFile) => unknown;
}

const places: Readonly<Record<UndecidedPart, Place>> = {
  language: { path: ['language'], value: (file) => file.language },
  identity: { path: ['identity'], value: (file) => file.identity },
  snomed: { path: ['snomed'], value: (file) => file.snomed },
  system: { path: ['catalogue', 'system'], value: (file) => file.catalogue?.system },
  bundle: { path: ['export', 'bundleType'], value: (file) => file.export?.bundleType },
  'rule-sets': { path: ['checks', 'ruleSets'], value: (file) => file.checks?.ruleSets },
};

/** In the order in which a person would decide. */
export function undecidedParts(file: ClinicFile): readonly UndecidedPart[] {
  return (Object.keys(places) as UndecidedPart[]) // keys of a literal
    .filter((part) => places[part].value(file) === UNDECIDED);
}

/**
 * Says that a part is undecided: to be told where it can wait, an error where it cannot.
 *
 * @param part As in `undecided` of a clinic.
 * @param severity Default `error`: something cannot do without it.
 * @returns The issue, with the path in the file.
 * @example
 * const refused = undecidedIssue('identity');
 */
export function undecidedIssue(part: UndecidedPart, severity: Severity = 'error'): Issue {
  const { path } = places[part];
  return issue('missing-property', path, { reason: `undecided-${part}` }, { severity });
}

/** A part as it was decided; undefined where it was not, or nothing was said. */
export function decided<Value>(value: Value | typeof UNDECIDED | undefined): Value | undefined {
  return value === UNDECIDED ? undefined : value;
}
