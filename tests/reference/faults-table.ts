import { faults } from '../../src/testing/faults/apply-fault.ts';
import { releases } from './definitions.ts';
import type { Verdicts } from './verdicts.ts';

export const tableFile: URL = new URL('verdicts/table.md', import.meta.url);

/** A table of all faults: for each version, how many mutants HL7's validator refuses out of how many. */
export function faultsTable(verdicts: Verdicts): string {
  const rows = faults.map(({ id, area, rule, severity }) => {
    const cells = releases.map((version) => {
      const list = verdicts[version].get(id);
      if (list === undefined) return '-';
      return `${list.filter(({ valid }) => !valid).length}/${list.length}`;
    });
    const lists = releases.flatMap((version) => verdicts[version].get(id) ?? []);
    const errors = [...new Set(lists.flatMap((verdict) => verdict.errors))].sort().slice(0, 3);
    const link = `[${rule.key}](${rule.url})`;
    return [id, area, link, severity, ...cells, errors.join('; ').replaceAll('|', '\\|')];
  });
  const head = ['fault', 'area', 'rule', 'severity', ...releases, 'its errors (at most three)'];
  return `${[
    "# Faults, and how many of their mutants HL7's validator refuses",
    '',
    'Written by record-verdicts.ts. A dash: no fault in that version.',
    '',
    ...[head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`),
  ].join('\n')}\n`;
}
