import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { example } from './example.ts';

/** What a page would load: one script for browsers, in which anything of Node would be an error. */
async function forBrowser(entry: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [new URL(`../../src/${entry}`, import.meta.url).pathname],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    globalName: 'library',
  });
  return outputFiles[0]?.text ?? '';
}

test.each(['validate/versions/r4.ts', 'validate/versions/r4b.ts', 'validate/versions/r5.ts'])(
  '%s runs without Node and where eval is forbidden',
  async (entry) => {
    const page = createContext({}, { codeGeneration: { strings: false, wasm: false } });
    expect(() => runInContext('eval("1")', page)).toThrow('Code generation from strings');
    runInContext(await forBrowser(entry), page);
    const text = JSON.stringify(example('Observation-abdo-tender'));
    expect(runInContext(`library.validateBundle(${text}).issues.length`, page)).toBe(0);
    expect(runInContext('library.validateBundle({}).issues[0].code', page)).toBe(
      'missing-property',
    );
  },
);

test('the exam validator runs without Node and where eval is forbidden', async () => {
  const page = createContext({}, { codeGeneration: { strings: false, wasm: false } });
  runInContext(await forBrowser('model/schema-issues.ts'), page);
  expect(runInContext('library.examSchemaIssues([])[0].code', page)).toBe('wrong-type');
});
