import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { readTables } from '../../src/generate/terminology/terminology.ts';
import { type Row, rows } from '../../src/generate/terminology/terminology-check.ts';

interface Reading {
  readonly table: string;
  readonly code: string;
  readonly target: string;
  /** The published name that was read. */
  readonly described: string;
  readonly relation: string;
  /** The second reading is the comparison of words below, and no person's. */
  readonly by?: 'words';
  /** Where the first reading was another one. */
  readonly first?: string;
  readonly settled?: string;
  readonly reason?: string;
}

const file: { readonly read: string; readonly rows: readonly Reading[] } = JSON.parse(
  await readFile(
    new URL('../../terminology/coverage/second-reading.json', import.meta.url),
    'utf8',
  ),
);
const tables = await readTables();

interface Mapped {
  readonly name: string;
  readonly display: string;
  readonly relation: string;
  readonly published: string | undefined;
}

const names = new Map(
  ['snomed', 'loinc'].flatMap((system) =>
    rows(tables, system).map((row) => [
      `${system} ${row.id ?? row.code}`,
      String(row.fsn ?? row.display ?? 'no name in the published file'),
    ]),
  ),
);

function listOf(row: Row, name: string): readonly Row[] {
  const list = row[name];
  return Array.isArray(list) ? list : [];
}

function mappedIn(table: string, row: Row, code: string): Mapped[] {
  return listOf(row, 'maps').map(({ system, code: id, relation }) => ({
    name: `${table} ${code} ${system} ${id}`,
    display: String(row.display),
    relation: String(relation),
    published: names.get(`${system} ${id}`),
  }));
}

const mapped = Object.keys(tables).flatMap((table) =>
  rows(tables, table).flatMap((row) => [
    ...mappedIn(table, row, String(row.code)),
    ...['values', 'items', 'grades'].flatMap((list) =>
      listOf(row, list).flatMap((value) =>
        mappedIn(table, value, `${String(row.code)}/${String(value.code)}`),
      ),
    ),
  ]),
);

function nameOf({ table, code, target }: Reading): string {
  return `${table} ${code} ${target}`;
}

test('every row with a published code was read twice, and nothing else is told as read', () => {
  expect(file.rows.map(nameOf).sort()).toEqual(mapped.map(({ name }) => name).sort());
  expect(file.read).toMatch(/^\d{4}-\d{2}-\d{2}$/);
});

test('both readings agree, or the disagreement is settled with a reason', () => {
  const relations = new Map(mapped.map(({ name, relation }) => [name, relation]));
  for (const reading of file.rows) {
    const { relation, first, settled, reason } = reading;
    const name = nameOf(reading);
    expect(relations.get(name), name).toBe(settled ?? relation);
    if (settled === undefined) continue;
    expect(first, name).not.toBe(relation);
    expect([first, relation], name).toContain(settled);
    expect(reason?.length, name).toBeGreaterThan(20);
  }
});

test('the name that was read is still the published one', () => {
  const published = new Map(mapped.map((one) => [one.name, one.published]));
  const changed = file.rows.filter((one) => published.get(nameOf(one)) !== one.described);
  expect(changed.map(nameOf)).toEqual([]);
});

/** The words that carry the meaning of a name, without its semantic tag, in one order. */
function wordsOf(name: string): string {
  const words = name
    .replace(/ \([^()]*\)$/, '')
    .toLowerCase()
    .split(/[^a-z0-9]+/);
  return words
    .filter((word) => !/^(|a|an|the|of|in|on|from)$/.test(word))
    .sort()
    .join(' ');
}

test('where words were compared and nobody read, row and name have the same words', () => {
  const displays = new Map(mapped.map((one) => [one.name, one.display]));
  const compared = file.rows.filter(({ by }) => by !== undefined);
  expect(compared.length).toBeGreaterThan(0);
  for (const reading of compared) {
    const name = nameOf(reading);
    expect([reading.by, reading.relation], name).toEqual(['words', 'equivalent']);
    expect(wordsOf(displays.get(name) ?? ''), name).toBe(wordsOf(reading.described));
  }
  expect(wordsOf('Pain on the skin')).not.toBe(wordsOf('Pain of skin on touch (finding)'));
});
