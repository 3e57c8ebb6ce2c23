import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { type PackageConcept, packageConcepts } from '../../src/generate/fhir-package/concepts.ts';
import { tableNames } from '../../src/generate/terminology/languages.ts';
import { readTables } from '../../src/generate/terminology/terminology.ts';
import { terminologyReadme } from '../../src/generate/terminology/terminology-readme.ts';
import { kebab } from '../../src/terminology/named-table.ts';
import { isFreeSnomed } from '../../src/terminology/published/snomed.ts';
import gaps from '../../terminology/coverage/gaps.json' with { type: 'json' };

test('terminology/README.md is what the tables give', async () => {
  const readme = new URL('../../terminology/README.md', import.meta.url);
  expect(await readFile(readme, 'utf8')).toBe(await terminologyReadme());
});

test('each named gap is one: its rows exist, and none has an equivalent code in that system', async () => {
  const tables = await readTables();
  const concepts = new Map<string, PackageConcept>(
    tableNames().flatMap((table) =>
      packageConcepts(table, tables, []).map(
        (one) => [`${kebab(table)}/${one.code}`, one] as const,
      ),
    ),
  );
  for (const { concept, rows, system } of gaps.gaps) {
    for (const row of rows) {
      const found = concepts.get(row);
      expect(found, `${concept}: ${row}`).toBeDefined();
      const equivalent = found?.maps.filter(
        (map) =>
          map.relation === 'equivalent' &&
          system.includes(map.system === 'loinc' ? 'LOINC' : 'SNOMED CT') &&
          (map.system === 'loinc' || isFreeSnomed(map.code)),
      );
      expect(equivalent, `${concept}: ${row}`).toEqual([]);
    }
  }
});
