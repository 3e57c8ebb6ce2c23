import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * The layers of src, lowest first. A file imports from its own layer and from those above it in this
 * list. Files at the top of src are the lowest layer, except index.ts, which may import anything.
 */
const layers = [
  '.',
  'terminology',
  'model',
  'fhir',
  'checks',
  'export',
  'read',
  'validate',
  'convert',
  'report',
  'testing',
  'cli',
] as const;

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
  const [first = '', second] = path.split('/');
  return second === undefined ? '.' : first;
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

  it('keeps node modules out of what a browser loads', () => {
    const wrong = imports
      .filter(({ target }) => target.startsWith('node:'))
      .filter(({ file }) => !nodeOnly.some((folder) => file.startsWith(`${folder}/`)))
      .map(({ file, target }) => `${file} imports ${target}`);
    expect(wrong).toEqual([]);
  });

  it('has no grab-bag files and none over 500 lines', () => {
    const names = files.filter((file) => /(^|\/)(utils?|helpers?|common|manager)\.ts$/.test(file));
    const long = files.filter(
      (file) =>
        !file.includes('tables/') && readFileSync(join(src, file), 'utf8').split('\n').length > 500,
    );
    expect({ names, long }).toEqual({ names: [], long: [] });
  });
});
