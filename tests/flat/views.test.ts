import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codeSystemUrl } from '../../src/fhir/names/code-systems.ts';
import { identitySystems } from '../../src/fhir/names/part-names.ts';
import { CANONICAL_BASE } from '../../src/fhir/names/systems.ts';
import { placesCsv } from '../../src/generate/terminology/places.ts';
import { clinic } from '../clinic.ts';

// What the shipped views hold; what engines make of them is asked by tests/readers/views.test.ts.

const folder = new URL('../../profiles/views/', import.meta.url);

interface Column {
  readonly name: string;
  readonly path: string;
  readonly description?: string;
}
interface View {
  readonly name: string;
  readonly constant?: readonly { readonly name: string; readonly valueUri: string }[];
  readonly where?: readonly { readonly path: string }[];
  readonly select: readonly { readonly column: readonly Column[]; readonly forEach?: string }[];
}

const views = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file): [string, View] => [file, JSON.parse(readFileSync(new URL(file, folder), 'utf8'))]);

/** What every engine must know, but for getReferenceKey, which each has. */
const portable = /^(where|exists|empty|first|ofType|getResourceKey|getReferenceKey)$/;

const known = new Set<string>([
  ...(['findings', 'regions', 'values', 'items', 'methods', 'reasons', 'modalities'] as const).map(
    (table) => codeSystemUrl(CANONICAL_BASE, table),
  ),
  ...(['testPoints', 'sensationResults', 'testResults', 'measures', 'symptoms'] as const).map(
    (table) => codeSystemUrl(CANONICAL_BASE, table),
  ),
  ...Object.values(identitySystems(CANONICAL_BASE, clinic.identity)),
  'http://snomed.info/sct',
  'http://terminology.hl7.org/CodeSystem/data-absent-reason',
]);

describe.each(views)('%s', (file, view) => {
  const paths = [
    ...(view.where ?? []).map(({ path }) => path),
    ...view.select.flatMap(({ column, forEach }) => [
      ...(forEach === undefined ? [] : [forEach]),
      ...column.map(({ path }) => path),
    ]),
  ];

  it('is named as its file, in words that are names in SQL', () => {
    expect(file).toBe(`${view.name.replaceAll('_', '-')}.json`);
    const columns = view.select.flatMap(({ column }) => column);
    const names = columns.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of [view.name, ...names]) expect(name).toMatch(/^[a-z][a-z_]*$/);
    for (const { description = '' } of columns) expect(description).not.toBe('');
  });

  it('uses what every engine has', () => {
    for (const path of paths) {
      for (const [, name = ''] of path.matchAll(/(\w+)\(/g)) expect(name).toMatch(portable);
    }
  });

  it('has the systems that an export writes, each used', () => {
    const used = paths.flatMap((path) => path.match(/%\w+/g) ?? []);
    const stated = (view.constant ?? []).map(({ name }) => `%${name}`);
    expect([...new Set(used)].sort()).toEqual(stated.sort());
    for (const { valueUri } of view.constant ?? [])
      expect(known.has(valueUri), valueUri).toBe(true);
  });
});

it('every code of a body site stands in the table of places', () => {
  expect(readFileSync(new URL('places.csv', folder), 'utf8')).toBe(placesCsv());
});
