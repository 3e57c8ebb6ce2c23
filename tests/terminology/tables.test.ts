import { readFile } from 'node:fs/promises';
import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { describe, expect, test } from 'vitest';
import { readTables, tableSources } from '../../src/generate/terminology/terminology.ts';
import {
  type Row,
  rows,
  type Tables,
  tableFaults,
  textsAt,
} from '../../src/generate/terminology/terminology-check.ts';
import { protocols } from '../../src/terminology/tables/protocols.ts';
import examItems from '../cases/terminology/exam-items.json' with { type: 'json' };
import findingRows from '../cases/terminology/finding-rows.json' with { type: 'json' };

const tables = await readTables();
const codes = (table: string): string[] => rows(tables, table).map((row) => String(row.code));

describe('tables', () => {
  test('have no unknown property, no double code and no dangling reference', () => {
    expect(tableFaults(tables)).toEqual([]);
  });

  test('are what the generated files were made from', async () => {
    for (const [name, text] of tableSources(tables)) {
      const path = new URL(`../../src/terminology/tables/${name}`, import.meta.url);
      expect(await readFile(path, 'utf8'), name).toBe(text);
    }
  });

  test('hold all points and tests of the cranial and neck nerves', () => {
    // Extent of the exam: the 31 points and tests of the cranial and neck nerves are all there.
    // Regions and measures that were once given are held by the ledger of codes.
    const nerves =
      'v1 v1-nose v1-cornea v2 v3 v3-pre ga lo tc sc frontalis corrugator orb-oculi-gentle orb-oculi-forced nasalis zygomaticus buccinator orb-oris dep-labii platysma cn5-masseter cn5-open jaw-jerk corneal-reflex cn8-whisper rinne weber cn9-10 cn11-scm cn11-trap cn12';
    expect(nerves.split(' ')).toHaveLength(31);
    expect(nerves.split(' ').filter((code) => !codes('test-points').includes(code))).toEqual([]);
    const figures = Object.entries(tables).map(
      ([name, { concepts }]) => `${name} ${concepts.length}`,
    );
    console.info(`rows by table: ${figures.join(', ')}`);
  });

  test('the protocol for all regions asks for each that can be examined, or says that it does not', () => {
    const full = protocols.find(({ code }) => code === 'full');
    const asked = new Set(full?.regions.map(({ region }) => region));
    const left = rows(tables, 'regions').filter((row) => {
      return row.group !== true && !asked.has(String(row.code));
    });
    // Nodes behind the breastbone, which the protocol names as outside.
    expect(left.map((row) => row.code)).toEqual(['ln-vii']);
    expect(full?.outside?.join()).toContain('level VII');
  });

  test('every region that is examined takes a method, and no group does', () => {
    const wrong = rows(tables, 'regions').filter((row) => {
      return (row.group === true) !== (textsAt(row, 'methods').length === 0);
    });
    expect(wrong).toEqual([]);
  });

  test('every group has regions below it, and nothing else has', () => {
    const parents = new Set(rows(tables, 'regions').map((row) => row.parent));
    const wrong = rows(tables, 'regions').filter((row) => {
      return (row.group === true) !== parents.has(row.code);
    });
    expect(wrong).toEqual([]);
  });

  test('every unit is UCUM, by the reference library of the UCUM data', () => {
    const ucum = UcumLhcUtils.getInstance();
    const units = new Set([
      ...rows(tables, 'measures').flatMap((row) => [
        ...textsAt(row, 'unit'),
        ...textsAt(row, 'units'),
      ]),
      ...rows(tables, 'attributes').flatMap((row) => textsAt(row, 'unit')),
      ...codes('units'),
    ]);
    const invalid = [...units].filter((code) => ucum.validateUnitString(code).status !== 'valid');
    expect(invalid).toEqual([]);
    expect(ucum.validateUnitString('dB[HL]').status).not.toBe('valid');
  });

  test('the licence of the UCUM data stands with them, word for word', async () => {
    const [ours, theirs] = await Promise.all(
      [
        '../../terminology/licences/ucum-lhc.md',
        '../../node_modules/@lhncbc/ucum-lhc/LICENSE.md',
      ].map((path) => readFile(new URL(path, import.meta.url), 'utf8')),
    );
    expect(ours).toBe(theirs);
  });

  test('no reference range without a population and a source', () => {
    const wrong = rows(tables, 'measures').filter((row) => {
      const ranges = (row.ranges ?? []) as readonly Row[]; // its shape is checked above
      return ranges.some(({ population, source, low, high, text }) => {
        return !population || !source || (low ?? high ?? text) === undefined;
      });
    });
    expect(wrong).toEqual([]);
  });

  test('no reason is exported as unknown', () => {
    expect(rows(tables, 'reasons').filter((row) => row.dataAbsentReason === 'unknown')).toEqual([]);
  });
});

describe('nothing of the exam is without a place', () => {
  test.each(examItems)('$item', ({ at }) => {
    const missing = at.filter((place) => {
      const [table = '', code = ''] = place.split('/');
      return !codes(table).includes(code);
    });
    expect(missing).toEqual([]);
    expect(at.length).toBeGreaterThan(0);
  });

  test('each of the 50 descriptors of findings has one', () => {
    expect(findingRows).toHaveLength(50);
    const places = findingRows.flatMap((row) => row.at);
    const missing = places.filter((place) => {
      const [table = '', code = ''] = place.split('/');
      return !codes(table).includes(code);
    });
    expect(missing).toEqual([]);
  });
});

describe('faults that the generator reports', () => {
  const changed = (table: string, change: (row: Row) => Row): Tables => {
    const file = tables[table];
    if (file === undefined) throw new Error(`no table ${table}`);
    const [first = {}, ...rest] = file.concepts;
    return { ...tables, [table]: { ...file, concepts: [change(first), ...rest] } };
  };

  test.each([
    ['unknown property', 'methods', (row: Row) => ({ ...row, colour: 'red' })],
    ['is missing', 'methods', ({ display: _display, ...row }: Row) => row],
    ['no nowhere in sections', 'regions', (row: Row) => ({ ...row, section: 'nowhere' })],
    ['no waving in methods', 'regions', (row: Row) => ({ ...row, methods: ['waving'] })],
    ['no nose-bridge in regions', 'findings', (row: Row) => ({ ...row, regions: ['nose-bridge'] })],
    ['expected evidence', 'methods', (row: Row) => ({ ...row, evidence: 'certain' })],
    [
      'the feature is the code before its dot',
      'findings',
      (row: Row) => ({ ...row, feature: 'x' }),
    ],
    ['no attribute of the family', 'findings', (row: Row) => ({ ...row, attributes: 'wing' })],
    ['go round in a circle', 'regions', (row: Row) => ({ ...row, parent: 'skin' })],
    ['stands twice', 'methods', (row: Row) => ({ ...row, code: 'palpation' })],
    ['unknown dataAbsentReason', 'reasons', (row: Row) => ({ ...row, dataAbsentReason: 'none' })],
    [
      'in snomed',
      'regions',
      (row: Row) => ({
        ...row,
        maps: [{ system: 'snomed', code: '1', relation: 'equivalent' }],
      }),
    ],
  ])('%s', (text, table, change) => {
    expect(tableFaults(changed(table, change)).join('\n')).toContain(text);
  });
});
