import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { parseExam, toBundle } from '../../src/index.ts';
import { builtInTables, type TableName } from '../../src/terminology/built-in.ts';
import {
  builtInCatalogue,
  type CatalogueAdditions,
  createCatalogue,
} from '../../src/terminology/catalogue.ts';
import { references } from '../../src/terminology/references.ts';

const system = 'https://clinic.example/codes';

describe('the built-in catalogue', () => {
  it.each(Object.keys(builtInTables) as TableName[])('%s: each row by its code', (name) => {
    const rows: readonly { readonly code: string }[] = builtInTables[name];
    expect(builtInCatalogue[name].size).toBe(rows.length);
    for (const row of rows) expect(builtInCatalogue[name].get(row.code)).toBe(row);
  });

  it('no row refers to one that is not there', () => {
    const dangling = (Object.keys(references) as (keyof typeof references)[]).flatMap((name) =>
      builtInTables[name].flatMap((row) => {
        // Table and row are of one name; TypeScript does not follow the pair.
        const of = references[name] as (
          row: unknown,
        ) => ReturnType<NonNullable<(typeof references)['regions']>>;
        return of(row)
          .filter(([table, code]) => code !== undefined && !builtInCatalogue[table].has(code))
          .map(([table, code]) => `${name} ${row.code}: ${table} ${code}`);
      }),
    );
    expect(dangling).toEqual([]);
  });

  it('has no row for names of properties that all objects have', () => {
    for (const name of ['constructor', '__proto__', 'toString']) {
      expect(builtInCatalogue.regions.has(name)).toBe(false);
    }
  });
});

const dimple: NonNullable<CatalogueAdditions['regions']>[number] = {
  code: 'chin-dimple',
  display: 'Dimple of the chin',
  parent: 'chin',
  section: 'skin',
  laterality: 'midline',
  methods: ['inspection'],
};

describe('an adopter adds rows', () => {
  it('which exams can use, and which keep the system of the adopter in FHIR', () => {
    const { value: catalogue, issues } = createCatalogue({
      system,
      regions: [dimple],
      findings: [{ code: 'dimple-deep', display: 'Deep dimple', regions: ['chin-dimple'] }],
    });
    expect(issues).toEqual([]);
    if (catalogue === undefined) throw new Error('no catalogue');
    const exam = examples.get('broken-off');
    const more = {
      ...exam,
      statements: [
        {
          kind: 'finding',
          key: 'dimple',
          finding: 'dimple-deep',
          presence: 'present',
          region: 'chin-dimple',
        },
      ],
    };
    expect(parseExam(more).issues.map(({ code }) => code)).toEqual([
      'unknown-region',
      'unknown-code',
    ]);
    const { value } = parseExam(more, { catalogue });
    if (value === undefined) throw new Error('no exam');
    const json = JSON.stringify(toBundle(value, { catalogue }).value);
    expect(json).toContain(JSON.stringify({ system, code: 'dimple-deep', display: 'Deep dimple' }));
    expect(json).toContain(`"system":"${system}","code":"chin-dimple"`);
  });

  it('and leaves the built-in catalogue as it was', () => {
    createCatalogue({ system, regions: [dimple] });
    expect(builtInCatalogue.regions.has('chin-dimple')).toBe(false);
  });

  const wrong: readonly [string, object, string[]][] = [
    ['a code of ours', { regions: [{ ...dimple, code: 'chin' }] }, ['duplicate-key /0/code']],
    ['a code twice', { regions: [dimple, dimple] }, ['duplicate-key /1/code']],
    [
      'a code of another form',
      { regions: [{ ...dimple, code: 'Chin 2' }] },
      ['invalid-value /0/code'],
    ],
    [
      'an unknown parent',
      { regions: [{ ...dimple, parent: 'jowl' }] },
      ['unresolved-key /0/parent'],
    ],
    [
      'an unknown section',
      { regions: [{ ...dimple, section: 'x' }] },
      ['unresolved-key /0/section'],
    ],
    [
      'an unknown method',
      { regions: [{ ...dimple, methods: ['x'] }] },
      ['unresolved-key /0/methods/0'],
    ],
    [
      'regions in a circle',
      {
        regions: [
          { ...dimple, code: 'a', parent: 'b' },
          { ...dimple, code: 'b', parent: 'a' },
        ],
      },
      ['contradiction /0/parent', 'contradiction /1/parent'],
    ],
    [
      'an unknown family of attributes',
      { findings: [{ code: 'a', display: 'A', regions: [], attributes: 'x' }] },
      ['unresolved-key /0/attributes'],
    ],
    [
      'a protocol with an unknown test',
      { protocols: [{ code: 'p', display: 'P', version: '1', regions: [], tests: ['x'] }] },
      ['unresolved-key /0/tests/0'],
    ],
    ['an unknown table', { region: [dimple] }, ['unknown-property ']],
  ];

  it.each(wrong)('%s gives an issue and no catalogue', (_, rows, expected) => {
    // Faulty on purpose: a caller without the type checker can do the same.
    const { value, issues } = createCatalogue({ system, ...rows } as CatalogueAdditions);
    expect(value).toBeUndefined();
    expect(issues.map(({ code, path }) => `${code} ${['', ...path.slice(1)].join('/')}`)).toEqual(
      expected,
    );
  });

  it('a system that is not a URI', () => {
    expect(createCatalogue({ system: 'ours' }).issues[0]).toMatchObject({ path: ['system'] });
  });
});

it.each([
  [null, []],
  [{}, ['system']],
  [{ system: 5 }, ['system']],
  [{ system: 'https://clinic.example/c', findings: 'x' }, ['findings']],
  [{ system: 'https://clinic.example/c', findings: [null] }, ['findings', 0]],
  [{ system: 'https://clinic.example/c', methods: [{ code: 'a' }] }, ['methods', 0, 'display']],
  [
    { system: 'https://clinic.example/c', methods: [{ code: 5, display: 'a' }] },
    ['methods', 0, 'code'],
  ],
  [
    { system: 'https://clinic.example/c', methods: [{ code: 'a', display: 'a', maps: 'x' }] },
    ['methods', 0, 'maps'],
  ],
])('additions of another shape, as %j, give an issue and no catalogue', (additions, path) => {
  const { value, issues } = createCatalogue(additions as never);
  expect(value).toBeUndefined();
  expect(issues.map((found) => found.path)).toContainEqual(path);
});
