import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const readme = readFileSync(resolve(root, 'README.md'), 'utf8');

/** The example as a user writes it: imports name the package and not the sources. */
function asUserCode(source: string): string {
  return source
    .replaceAll("'../src/index.ts'", "'face-neck-fhir'")
    .replaceAll(
      /'\.\.\/src\/validate\/versions\/([a-z0-9]+)\.ts'/g,
      "'face-neck-fhir/validate/$1'",
    );
}

describe('README', () => {
  it('shows the examples that the tests run', () => {
    const shown = readme.matchAll(
      /<!-- example: (\S+) -->\n```ts\n([\s\S]*?)```\n<!-- \/example -->/g,
    );
    const files = [...shown].map(([, file = '', code]) => {
      expect(code).toBe(asUserCode(readFileSync(resolve(root, file), 'utf8')));
      return file;
    });
    expect(files).toEqual(['examples/library.ts', 'examples/form.ts', 'examples/life.ts']);
  });

  it('names entries that package.json exports, and commands that it has', () => {
    const { exports, scripts } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8'));
    const entries = [...readme.matchAll(/`face-neck-fhir(\/[a-z0-9/.-]+)?`/g)].map(
      ([, path]) => `.${path ?? ''}`,
    );
    expect(entries.filter((entry) => !Object.hasOwn(exports, entry))).toEqual([]);
    // The first column names each entry, those of one row after the first by their ends alone.
    const column = [...readme.matchAll(/^\| (`face-neck-fhir[^|]*) \|/gm)].map(([, cell]) => cell);
    const named = column.join().replaceAll('`', '');
    const last = (entry: string): string =>
      entry === '.' ? 'face-neck-fhir' : entry.replace(/.*\//, '/');
    const unnamed = Object.keys(exports).filter((entry) => !named.includes(last(entry)));
    expect(unnamed).toEqual(['./package.json']);
    const commands = [...readme.matchAll(/npm run ([a-z:-]+)/g)].map(([, name = '']) => name);
    expect(commands.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
  });

  it('names functions that the entries beside them export', async () => {
    const { exports } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8'));
    const rows = readme.matchAll(/^\| `face-neck-fhir(\/[a-z0-9/-]+)?`[^|]*\| (.*) \|$/gm);
    let count = 0;
    for (const [, path, text = ''] of rows) {
      const { default: file } = exports[`.${path ?? ''}`];
      const source = file.replace('./dist/', '../src/').replace(/\.js$/, '.ts');
      const module = await import(source);
      const names = [...text.matchAll(/`([a-z]\w+)`/g)].map(([, name = '']) => name);
      expect(names.filter((name) => !Object.hasOwn(module, name))).toEqual([]);
      count += names.length;
    }
    expect(count).toBeGreaterThan(10);
  });

  it('begins with the job in one paragraph', () => {
    const [title, job] = readme.split('\n\n');
    expect(title).toBe('# face-neck-fhir');
    expect(job).toMatch(/^A clinician examines a face and neck/);
  });
});
