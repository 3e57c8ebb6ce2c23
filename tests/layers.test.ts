import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/**
 * The layers of src, lowest first. A file imports from its own layer and from those above it in this
 * list. index.ts at the top of src may import anything.
 */
const layers = [
  'issues',
  'data',
  'xml',
  'terminology',
  'find',
  'model',
  'fhir',
  'checks',
  'deidentify',
  'export',
  'read',
  'sign',
  'deliver',
  'validate',
  'convert',
  'report',
  'letters',
  'audit',
  'flat',
  'forms',
  'clinic',
  'testing',
  'cli',
] as const;

/**
 * `kinds` holds one folder a kind of statement, and in it one file a step, named alike in every
 * folder. Such a file belongs to the layer of the step that asks it, and so does a registry.
 */
const facets: Readonly<Record<string, (typeof layers)[number]>> = {
  statement: 'model',
  build: 'model',
  export: 'export',
  read: 'read',
  check: 'checks',
  page: 'report',
  flat: 'flat',
  convert: 'convert',
  sample: 'testing',
};

/** What all kinds have in common, in two folders beside theirs: the form of each facet, and the registries. */
const shared: readonly string[] = ['facets', 'registries'];

/** Files of these two folders. */
const sharedFiles: Readonly<Record<string, (typeof layers)[number]>> = {
  base: 'model',
  builders: 'model',
  form: 'model',
  forms: 'model',
  meaning: 'model',
  meanings: 'model',
  'to-observation': 'export',
  'from-observation': 'read',
  page: 'report',
  pages: 'report',
  check: 'checks',
  checks: 'checks',
  flat: 'flat',
  flats: 'flat',
  conversion: 'convert',
  conversions: 'convert',
  sample: 'testing',
  samples: 'testing',
  'subject-tables': 'model',
  'counted-as': 'cli',
};

/** Neighbours that do not know each other, although one stands above the other in the list. */
const strangers: readonly (readonly [string, string])[] = [
  ['export', 'checks'],
  ['read', 'export'],
  ['read', 'checks'],
  ['validate', 'export'],
  ['validate', 'read'],
  ['validate', 'checks'],
];

/** Built for Node alone, and not part of what a browser loads. */
const nodeOnly = ['cli', 'generate', 'convert/bulk'];

const src = resolve(import.meta.dirname, '../src');

interface Import {
  readonly file: string;
  readonly target: string;
}

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .filter((file) => !file.startsWith('generate') && file !== 'index.ts');

const imports: readonly Import[] = files.flatMap((file) => {
  const text = readFileSync(join(src, file), 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?'([^']+)'/g)].map(([, target = '']) => ({
    file,
    target,
  }));
});

function layerOf(path: string): string {
  const [first = '', second, third] = path.split('/');
  if (second === undefined) return '.';
  if (first !== 'kinds') return first;
  const [name = ''] = (third ?? second).split('.');
  return (shared.includes(second) ? sharedFiles : facets)[name] ?? path;
}

const kinds = readdirSync(join(src, 'kinds'), { withFileTypes: true }).flatMap((entry) =>
  entry.isDirectory() && !shared.includes(entry.name) ? [entry.name] : [],
);

/** A comparison of a kind with a name, or a case of a `switch` that is such a name. */
const kindTest = new RegExp(`(kind ?[!=]== ?|case )'(${kinds.join('|')})'`);

function tellsKinds(file: string): boolean {
  return kindTest.test(readFileSync(join(src, file), 'utf8'));
}

/** Files that spread a list whose length no data decides, and what it is. */
const fixedSpreads: Readonly<Record<string, string>> = {
  'checks/rules-table.ts': 'rows of the table of rules',
  'checks/rules/r43-pupils.ts': 'four figures',
  'cli/help.ts': 'options of the command line',
  'read/foreign/published-codes.ts': 'names of an edition',
  'testing/arbitrary.ts': 'sizes of a sample',
  'testing/faults/place.ts': 'names that a fault is about',
};

/** Whether a list is passed as arguments, `f(...list)`; what came as arguments may go on as such. */
function spreadsList(file: string): boolean {
  const text = readFileSync(join(src, file), 'utf8');
  if (!/\([^()]*\.\.\./.test(text)) return false;
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, false);
  const rest = new Set<string>();
  const spreads: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isParameter(node) && node.dotDotDotToken) rest.add(node.name.getText(source));
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      for (const given of node.arguments ?? []) {
        if (ts.isSpreadElement(given)) spreads.push(given.expression.getText(source));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return spreads.some((list) => !rest.has(list));
}

describe('layers of src', () => {
  it('has no folder outside the list', () => {
    const unknown = files.map(layerOf).filter((layer) => !layers.some((known) => known === layer));
    expect([...new Set(unknown)]).toEqual([]);
  });

  it('imports only from its own layer and those above', () => {
    const wrong = imports
      .filter(({ target }) => target.startsWith('.'))
      .map(({ file, target }) => {
        const to = relative(src, resolve(src, dirname(file), target));
        return { file, to, from: layerOf(file), into: layerOf(to) };
      })
      .filter(({ from, into }) => {
        const order = (layer: string): number => (layers as readonly string[]).indexOf(layer);
        const stranger = strangers.some(([a, b]) => a === from && b === into);
        return order(into) > order(from) || stranger;
      })
      .map(({ file, to }) => `${file} imports ${to}`);
    expect(wrong).toEqual([]);
  });

  it('asks the registries of kinds, and tells no kind apart outside them', () => {
    const telling = files.filter((file) => !file.startsWith('kinds/') && tellsKinds(file));
    expect(telling).toEqual([]);
  });

  it('keeps node modules out of what a browser loads', () => {
    const wrong = imports
      .filter(({ target }) => target.startsWith('node:'))
      .filter(({ file }) => !nodeOnly.some((folder) => file.startsWith(`${folder}/`)))
      .map(({ file, target }) => `${file} imports ${target}`);
    expect(wrong).toEqual([]);
  });

  it('passes no list as arguments, which overflow the stack from some hundred thousand on', () => {
    const written = files.filter((file) => !/(?:tables|compiled)\//.test(file));
    expect(written.filter(spreadsList).sort()).toEqual(Object.keys(fixedSpreads).sort());
  });

  it('has no grab-bag files and none over 500 lines', () => {
    const names = files.filter((file) => /(^|\/)(utils?|helpers?|common|manager)\.ts$/.test(file));
    const long = files.filter(
      (file) =>
        !/tables\/|^issues\/(?:english|german)\//.test(file) &&
        readFileSync(join(src, file), 'utf8').split('\n').length > 500,
    );
    expect({ names, long }).toEqual({ names: [], long: [] });
  });
});
