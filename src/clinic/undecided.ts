import type { Issue, Severity } from '../issues/issue.ts';
import type { ClinicFile } from './clinic-file.ts';
import { issue } from './issue.ts';

/** What stands in a clinic file where nobody has decided yet. */
export const UNDECIDED = 'undecided';

/** What a clinic can leave undecided. */
export type UndecidedPart = 'identity' | 'system' | 'snomed' | 'language' | 'bundle' | 'rule-sets';

const places = {
  language: {
    path: ['language'],
    value: (file: ClinicFile) => file.language,
    reason: 'undecided-language',
  },
  identity: {
    path: ['identity'],
    value: (file: ClinicFile) => file.identity,
    reason: 'undecided-identity',
  },
  snomed: {
    path: ['snomed'],
    value: (file: ClinicFile) => file.snomed,
    reason: 'undecided-snomed',
  },
  system: {
    path: ['catalogue', 'system'],
    value: (file: ClinicFile) => file.catalogue?.system,
    reason: 'undecided-system',
  },
  bundle: {
    path: ['export', 'bundleType'],
    value: (file: ClinicFile) => file.export?.bundleType,
    reason: 'undecided-bundle',
  },
  'rule-sets': {
    path: ['checks', 'ruleSets'],
    value: (file: ClinicFile) => file.checks?.ruleSets,
    reason: 'undecided-rule-sets',
  },
} as const satisfies Readonly<Record<UndecidedPart, object>>;

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
  const { path, reason } = places[part];
  return issue('missing-property', path, { reason }, { severity });
}

/** A part as it was decided; undefined where it was not, or nothing was said. */
export function decided<Value>(value: Value | typeof UNDECIDED | undefined): Value | undefined {
  return value === UNDECIDED ? undefined : value;
}
