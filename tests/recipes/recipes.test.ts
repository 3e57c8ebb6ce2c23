import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { beforeAll, expect, it } from 'vitest';
import {
  addIssueCode,
  addKind,
  addLanguage,
  addRegion,
  addRegionDisplay,
  addRule,
  addSetting,
  addSign,
  registryLines,
} from './recipes.ts';
import { digests, makeScratch, readScratch, run, scratch, write } from './scratch.ts';

/** What is run in the copy when the recipes are done; RECIPES_WHOLE=1 runs the whole quick suite. */
const related = [
  'tests/recipes-done',
  'tests/kinds',
  'tests/layers.test.ts',
  'tests/report/kinds-on-page.test.ts',
  'tests/testing/sample-exam.test.ts',
  'tests/testing/formats',
  'tests/terminology/tables.test.ts',
  'tests/terminology/code-ledger.test.ts',
  'tests/checks/rules/rules.test.ts',
  'tests/checks/rules/rules-table.test.ts',
  'tests/checks/coverage.test.ts',
  'tests/checks/settings.test.ts',
  'tests/issues',
  'tests/export/languages.test.ts',
  'tests/export/negatives.test.ts',
];

const generate = (): ReturnType<typeof run> => run('npm', 'run', '--silent', 'generate');

beforeAll(makeScratch);

it('generates nothing where a display is missing, and says where to write it', () => {
  addRegion();
  const before = digests();
  const { code, said } = generate();
  expect(said).toContain(
    'terminology/languages/de.json: displays.regions.smell-cleft is missing: write it there',
  );
  expect(said).toContain('Nothing was generated');
  expect(code).toBe(1);
  const after = digests();
  expect([...after].filter(([file, digest]) => before.get(file) !== digest)).toEqual([]);
});

it('generates when all recipes are carried out, and a second time changes nothing', () => {
  addRegionDisplay();
  addSign();
  addKind();
  addIssueCode();
  addRule();
  addSetting();
  addLanguage();
  const { code, said } = generate();
  expect(said).toContain('src/terminology/tables/language-nl.ts');
  expect(code, said).toBe(0);
  expect(generate().said).toContain('Everything is up to date.');
  const compiled = run('npm', 'run', '--silent', 'compile');
  expect(compiled.code, compiled.said).toBe(0);
});

it('compiles, and not where one line of a registry is missing', () => {
  const done = readFileSync(join(import.meta.dirname, 'new-things.txt'), 'utf8');
  write('tests/recipes-done/new-things.test.ts', done);
  const service = compiler();
  const missing = (): string[] => service.faults();
  expect(missing()).toEqual([]);
  const silent = registryLines.filter(([file, , text]) => {
    const whole = readScratch(file);
    service.give(file, whole.replace(text, ''));
    const found = service.faults(file);
    service.give(file, whole);
    return found.length === 0;
  });
  expect(silent.map(([file, , text]) => `${file}: ${text}`)).toEqual([]);
});

it('has the new things everywhere, and passes the tests that know of all kinds', () => {
  const files = process.env['RECIPES_WHOLE'] === '1' ? [] : related;
  const { code, said } = run(
    'npx',
    'vitest',
    'run',
    '--config',
    'tests/vitest.config.ts',
    ...files,
  );
  console.log(said.split('\n').slice(-12).join('\n'));
  expect(code, said.slice(-20_000)).toBe(0);
});

/** The compiler on the copy, kept between edits, so that a line left out is told in a second. */
function compiler(): {
  readonly give: (file: string, text: string) => void;
  readonly faults: (file?: string) => string[];
} {
  const config = join(scratch, 'tests', 'tsconfig.json');
  const parsed = ts.getParsedCommandLineOfConfigFile(
    config,
    {},
    {
      ...ts.sys,
      onUnRecoverableConfigFileDiagnostic: (fault) => {
        throw new Error(String(fault.messageText));
      },
    },
  );
  if (parsed === undefined) throw new Error(`cannot read ${config}`);
  const given = new Map<string, string>();
  let version = 0;
  const versions = new Map<string, number>();
  const service = ts.createLanguageService({
    getCompilationSettings: () => parsed.options,
    getScriptFileNames: () => parsed.fileNames,
    getScriptVersion: (file) => String(versions.get(file) ?? 0),
    getScriptSnapshot: (file) => {
      const text = given.get(file) ?? ts.sys.readFile(file);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => scratch,
    getDefaultLibFileName: (options) => ts.getDefaultLibFilePath(options),
    fileExists: ts.sys.fileExists,
    readFile: ts.sys.readFile,
    readDirectory: ts.sys.readDirectory,
    directoryExists: ts.sys.directoryExists,
    getDirectories: ts.sys.getDirectories,
  });
  const faultsOf = (file: string): string[] =>
    [...service.getSyntacticDiagnostics(file), ...service.getSemanticDiagnostics(file)].map(
      ({ messageText, start = 0, file: at }) =>
        `${file.slice(scratch.length + 1)}:${(at?.getLineAndCharacterOfPosition(start).line ?? 0) + 1} ${ts.flattenDiagnosticMessageText(messageText, ' ')}`,
    );
  // A kind that is not in the union, or a group that is not in its type, is missed where it is used.
  const users = [
    'src/kinds/registries/forms.ts',
    'src/kinds/registries/conversions.ts',
    'src/terminology/tables/test-points.ts',
    'tests/report/told-by-kind/told-by-kind.ts',
  ];
  return {
    give: (file, text) => {
      const path = join(scratch, file);
      given.set(path, text);
      versions.set(path, ++version);
    },
    faults: (file) =>
      file === undefined
        ? parsed.fileNames.flatMap(faultsOf)
        : [...new Set([file, ...users])].flatMap((one) => faultsOf(join(scratch, one))),
  };
}
