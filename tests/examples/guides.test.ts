import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it, vi } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const folder = resolve(root, 'examples/guides');
/** Of words and of figures alone. */
const withoutCode = ['glossary.md', 'speed.md'];
const guides = readdirSync(folder).filter(
  (name) => name.endsWith('.md') && !withoutCode.includes(name),
);

/** What the code of each guide prints, line by line. */
const prints: Readonly<Record<string, readonly string[]>> = {
  analyse: ['signs that are there: 48', 'cells that could tell who it is: true'],
  clinic: [
    'checks.ruleSets information',
    'Check for tar',
    'tar-stain',
    '1 gaps',
    'transaction quay-7',
    'identity,rule-sets false',
    'error  words.findings.tar-stian  the table findings has no such row (expected perhaps tar-stain, of the table findings) [unknown-code]',
  ],
  'contribute-a-code': ['M7'],
  convert: [
    'vineyard.K-7 1',
    'set aside: impossible-date {"line":3}',
    '5 of 10 fields became codes',
  ],
  embed: ['true'],
  filing: ['DiagnosticReport Practitioner DocumentReference', 'true'],
  find: [
    'eac-wax Wax in the ear canal',
    'region tm Trommelfell',
    'sign tm-intact.perforated Trommelfell perforiert',
  ],
  forms: [
    'Kieferschmerz 13',
    'warning  finding/tmj-click/tmj/left  after the other answers the form does not ask this, so the answer is not taken [not-in-exam]',
    'region-state/tmj/left',
  ],
  'install-definitions': ['true false'],
  life: ['corrected corrected'],
  'read-others': ['Small lump, left cheek', 'all of it was read'],
  scale: ['6 records 6 answers', '2 kept back', 'the same in two parts: true'],
  validate: ['false missing-property', 'error'],
};

/** Entry of the package by its file in src. */
const entries: ReadonlyMap<string, string> = new Map(
  Object.entries<{ default?: string }>(
    JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')).exports,
  ).map(([entry, { default: file = '' }]) => [
    file.replace('./dist/', 'src/').replace(/\.js$/, '.ts'),
    entry.replace('.', 'face-neck-fhir'),
  ]),
);

it('each guide is held to what it prints', () => {
  expect(guides).toEqual(Object.keys(prints).map((name) => `${name}.md`));
});

it.each(Object.entries(prints))('the guide %s shows code that runs', async (name, lines) => {
  const text = readFileSync(resolve(folder, `${name}.md`), 'utf8');
  const blocks = [
    ...text.matchAll(/<!-- example: (\S+) -->\n```ts\n([\s\S]*?)```\n<!-- \/example -->/g),
  ];
  expect(blocks.map(([, file]) => file)).toEqual([`examples/guides/${name}.ts`]);
  expect(text.match(/```ts/g)).toHaveLength(1);
  const source = readFileSync(resolve(folder, `${name}.ts`), 'utf8');
  const asUserCode = source.replaceAll(/'(?:\.\.\/)+(src\/[^']+)'/g, (_, file: string) => {
    expect([...entries.keys()]).toContain(file);
    return `'${entries.get(file)}'`;
  });
  expect(blocks[0]?.[2]).toBe(asUserCode);

  const printed = vi.spyOn(console, 'log').mockImplementation(() => {});
  await import(`../../examples/guides/${name}.ts`);
  const shown = printed.mock.calls.map((call) =>
    call.map((one) => (typeof one === 'object' ? JSON.stringify(one) : String(one))).join(' '),
  );
  printed.mockRestore();
  expect(shown).toEqual(lines);
});

it('the glossary names every kind of statement, and each word once, with one sentence', () => {
  const text = readFileSync(resolve(folder, 'glossary.md'), 'utf8');
  const rows = [...text.matchAll(/^\| ([a-z ]+) \| (.+) \|$/gm)].slice(1);
  const words = rows.map(([, word]) => word);
  expect(words).toEqual([...new Set(words)]);
  expect(words.length).toBeGreaterThan(30);
  for (const [, , meaning] of rows) expect(meaning).toMatch(/^[A-Z][^|]*\.$/);
  const [, , kinds = ''] = rows.find(([, word]) => word === 'kind') ?? [];
  const folders = readdirSync(resolve(root, 'src/kinds'));
  const named = folders.filter((name) => name !== 'facets' && name !== 'registries');
  expect(named.filter((kind) => !kinds.includes(kind.replace('-', ' ')))).toEqual([]);
});
