import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codeEntries, entries, fresh, root, run, tsc } from './fresh.ts';

/** A program of the stranger, run by plain Node. */
function program(name: string, source: string, ...args: string[]): string {
  writeFileSync(join(fresh, name), source);
  return run(process.execPath, [...args, name], fresh);
}

const example = readFileSync(join(root, 'examples/library.ts'), 'utf8')
  .replaceAll("'../src/index.ts'", "'face-neck-fhir'")
  .replaceAll(/'\.\.\/src\/validate\/versions\/([a-z0-9]+)\.ts'/g, "'face-neck-fhir/validate/$1'");

describe('the installed package', () => {
  it('loads every entry that it exports', () => {
    const lines = entries.map(({ name, file }) =>
      file === undefined
        ? `console.log(typeof (await import('${name}', { with: { type: 'json' } })).default)`
        : `console.log(Object.keys(await import('${name}')).length > 0)`,
    );
    const told = program('every-entry.mjs', lines.join('\n'), '--no-warnings').trim().split('\n');
    expect(told).toEqual(entries.map(({ file }) => (file === undefined ? 'object' : 'true')));
  });

  it('exports nothing else', () => {
    const told = program(
      'inner.mjs',
      "await import('face-neck-fhir/dist/index.js').catch(({ code }) => console.log(code))",
    );
    expect(told.trim()).toBe('ERR_PACKAGE_PATH_NOT_EXPORTED');
  });

  it('runs the example of the README from plain JavaScript', () => {
    expect(program('example.mjs', example)).toMatch(/^true \d+ \{\n/);
  });

  it.each([
    ['node16', 'Node16'],
    ['nodenext', 'NodeNext'],
    ['bundler', 'ESNext'],
  ])('has types for moduleResolution %s', (moduleResolution, module) => {
    const imports = codeEntries.map(({ name }, at) => `import * as entry${at} from '${name}';`);
    const uses = codeEntries.map((_, at) => `entry${at}`);
    writeFileSync(
      join(fresh, 'use.ts'),
      `${imports.join('\n')}\n${example}\nexport const all: readonly object[] = [${uses}];\n`,
    );
    // A type that a wrong resolution would turn into any must refuse a wrong argument.
    writeFileSync(
      join(fresh, 'misuse.ts'),
      "import { toBundle } from 'face-neck-fhir';\n// @ts-expect-error an exam is not a number\ntoBundle(7);\n",
    );
    writeFileSync(
      join(fresh, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          strict: true,
          noEmit: true,
          target: 'ES2022',
          lib: ['ES2022', 'DOM'],
          types: [],
          module,
          moduleResolution,
        },
        files: ['use.ts', 'misuse.ts'],
      }),
    );
    expect(run(process.execPath, [tsc, '-p', '.'], fresh)).toBe('');
  });
});

describe('the assertions of the installed package', () => {
  const sample =
    "import { toBundleOrThrow } from 'face-neck-fhir';\n" +
    "import * as harness from 'face-neck-fhir/testing';\n" +
    "const exam = harness.sampleExam(1, { size: 'small' });\n" +
    'const bundle = toBundleOrThrow(exam);\n';

  it("work with Node's own test runner", () => {
    const source = `${sample}
import assert from 'node:assert';
import { test } from 'node:test';
test('holds', () => { harness.assertHoldsExam(bundle, exam); harness.assertConformsTo(bundle); });
test('fails', () => assert.throws(() => harness.assertConformsTo({}), harness.AssertionFailure));
`;
    const told = program('harness.test.mjs', source, '--test');
    expect(told).toMatch(/pass 2/);
    expect(told).toMatch(/fail 0/);
  });

  it("work with jest's expect", () => {
    const source = `${sample}
import { expect } from 'expect';
expect.extend({ ...harness.matchers });
expect(bundle).toConformTo('R4');
expect(bundle).toHoldExam(exam);
expect({}).not.toConformTo();
try { expect({}).toConformTo(); } catch (error) { console.log(error.message); }
`;
    expect(program('jest.mjs', source)).toMatch(/^the resource does not conform to FHIR R4\n/);
  });
});

describe('the JavaScript example', () => {
  it('type-checks against the built package, and notices a wrong code', () => {
    expect(run(process.execPath, [tsc, '-p', 'examples/javascript'], root)).toBe('');
    const source = readFileSync(join(root, 'examples/javascript/exam.mjs'), 'utf8');
    writeFileSync(join(fresh, 'wrong.mjs'), source.replace("'naevus',", "'nevus',"));
    const options = ['--allowJs', '--noEmit', '--strict', '--skipLibCheck'];
    const target = ['--target', 'ES2022', '--module', 'NodeNext', '--ignoreConfig', 'wrong.mjs'];
    expect(() => run(process.execPath, [tsc, ...options, ...target], fresh)).toThrow(/nevus/);
  });

  it('runs, and keeps the decimal as it was read', () => {
    const told = JSON.parse(run(process.execPath, ['examples/javascript/exam.mjs'], root));
    expect(told.resourceType).toBe('Bundle');
    expect(run(process.execPath, ['examples/javascript/exam.mjs'], root)).toContain('"value": 4.0');
  });
});
