import type { Clinic } from '../../clinic/clinic.ts';
import { ownRows } from '../../clinic/own-rows.ts';

/** What a clinic has decided, for people: a line each. */
export function clinicText({ file, language, undecided, ...clinic }: Clinic): string {
  const { export: exported, checks } = clinic;
  const open = (part: (typeof undecided)[number], text: string): string =>
    undecided.includes(part) ? 'undecided' : text;
  const lines: readonly (readonly [what: string, text: string])[] = [
    ['name', file.name ?? 'none'],
    ['language', open('language', language)],
    ['identity', open('identity', identityText(exported.identity))],
    ['SNOMED CT', open('snomed', policyText(exported.snomed))],
    ['bundle', open('bundle', exported.bundleType ?? 'collection')],
    ['target', exported.target ?? 'none'],
    ['rule sets', open('rule-sets', checks.ruleSets?.join(', ') || 'none')],
    ['own rows', rowsText(file.catalogue)],
    ['code map', linesText(file.codeMap?.length ?? 0)],
  ];
  return lines.map(([what, text]) => `${what.padEnd(12)}${text}\n`).join('');
}

function linesText(count: number): string {
  return count === 0 ? 'none' : `${count} ${count === 1 ? 'line' : 'lines'}`;
}

function identityText(identity: Clinic['export']['identity']): string {
  if (identity === undefined) return 'none; nothing can be stored';
  return typeof identity === 'string' ? identity : Object.values(identity).join(', ');
}

function policyText(policy: Clinic['export']['snomed']): string {
  if (policy === undefined) return 'free-set';
  return typeof policy === 'string' ? policy : `licensed, ${policy.licensed.holder}`;
}

function rowsText(additions: Clinic['file']['catalogue']): string {
  const counts = new Map<string, number>();
  for (const { table } of additions === undefined ? [] : ownRows(additions)) {
    counts.set(table, (counts.get(table) ?? 0) + 1);
  }
  return [...counts].map(([table, count]) => `${table} ${count}`).join(', ') || 'none';
}
