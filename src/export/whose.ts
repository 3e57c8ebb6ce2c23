import { identitySystems } from '../fhir/names/part-names.ts';
import { CANONICAL_BASE } from '../fhir/names/systems.ts';
import { type Issue, issue } from '../issues/issue.ts';
import type { Path } from '../issues/path.ts';
import type { Exam } from '../model/exam.ts';
import type { ExportOptions } from './options.ts';

/** The options that say whose the record is. */
type Whose = Pick<ExportOptions, 'identity' | 'canonicalBase'>;

const names = ['exam', 'statement', 'tracking'] as const;

/**
 * What keeps the record of one clinic apart from those of all others: the systems of its identifiers,
 * from which all ids follow. Our own name no clinic, so what is stored under them would meet the exam
 * of the same number of another clinic, and write over it.
 * @param stored the resources are for a server that keeps them, and not only to be looked at
 */
export function identityIssues({ identity, canonicalBase }: Whose, stored: boolean): Issue[] {
  if (!stored) return [];
  const systems = identitySystems(canonicalBase ?? CANONICAL_BASE, identity);
  const ours = identitySystems(CANONICAL_BASE, undefined);
  const missing = names.filter((name) => systems[name] === ours[name]);
  const paths: readonly Path[] =
    typeof identity === 'object' || missing.length === 0
      ? missing.map((name) => ['identity', name])
      : [['identity']];
  return paths.map((path) => issue('missing-property', path, { reason: 'identity' }));
}

/** A record that is stored belongs to somebody whom the server can tell from all others. */
export function patientIssues({ subject }: Exam, stored: boolean): Issue[] {
  if (!stored || subject.reference !== undefined || subject.identifiers !== undefined) return [];
  return [issue('missing-property', ['subject'], { reason: 'patient' })];
}
