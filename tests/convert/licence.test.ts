import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { licenceIssues } from '../../src/fhir/licence/licence-gate.ts';
import { run } from '../cli/in-process.ts';
import { conceptUris, planted } from '../export/codings/licence-channels.ts';

const example = join(import.meta.dirname, '../../examples/convert');
const mapping = join(example, 'vineyard.mapping.json');
const [header = '', ...rows] = readFileSync(join(example, 'vineyard.csv'), 'utf8')
  .trimEnd()
  .split('\n');

/** Each row with each of its cells replaced by what names a concept that may not leave. */
function plantedRows(): string[] {
  return rows.flatMap((row, at) => {
    const cells = row.split(';');
    return cells.map((_, place) => {
      const uri = conceptUris[(at + place) % conceptUris.length] ?? '';
      return cells.map((cell, column) => (column === place ? uri : cell)).join(';');
    });
  });
}

interface Answer {
  readonly result?: unknown;
  readonly quarantine?: { readonly issues: readonly { readonly code: string }[] };
}

describe('the licence policy over what a conversion writes', () => {
  it.each(['free-set', 'none'] as const)(
    'holds under %s, whatever cell names it',
    async (policy) => {
      const stdin = plantedRows()
        .map((raw, id) => JSON.stringify({ id, raw, header: header.split(';') }))
        .join('\n');
      const argv = ['convert', '--lines', '--mapping', mapping, '--snomed', policy];
      const { out } = await run(argv, { stdin });
      const answers: Answer[] = out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line));
      const bundles = answers.flatMap(({ result }) => (result === undefined ? [] : [result]));
      const named = bundles.filter((one) => JSON.stringify(one).includes(planted));
      expect(named).toEqual([]);
      expect(bundles.flatMap((one) => licenceIssues(one, policy))).toEqual([]);
      const reasons = answers.flatMap(({ quarantine }) => quarantine?.issues ?? []);
      expect(reasons.filter(({ code }) => code === 'licence-policy').length).toBeGreaterThan(5);
      expect(bundles.length + answers.filter(({ quarantine }) => quarantine).length).toBe(
        answers.length,
      );
    },
  );
});
