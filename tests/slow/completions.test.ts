import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue } from '../../src/index.ts';

/** What an editor offers where `|` stands, as TypeScript's own language service gives it. */
const folder = fileURLToPath(new URL('../', import.meta.url));
const file = `${folder}slow/completed.ts`;
const head = `import { absent, type ExamDraft, measured, normal, notExamined, noted, present } from '../../src/index.ts';
export function x(draft: ExamDraft): void {
`;
let text = '';
let version = 0;
const { config } = ts.readConfigFile(`${folder}tsconfig.json`, ts.sys.readFile);
const { options } = ts.parseJsonConfigFileContent(config, ts.sys, folder);
const service = ts.createLanguageService({
  getScriptFileNames: () => [file],
  getScriptVersion: (name) => (name === file ? String(version) : '1'),
  getScriptSnapshot: (name) => {
    const source = name === file ? text : ts.sys.readFile(name);
    return source === undefined ? undefined : ts.ScriptSnapshot.fromString(source);
  },
  getCurrentDirectory: () => folder,
  getCompilationSettings: () => options,
  getDefaultLibFileName: ts.getDefaultLibFilePath,
  fileExists: (name) => name === file || ts.sys.fileExists(name),
  readFile: (name) => (name === file ? text : ts.sys.readFile(name)),
});

function offered(call: string): readonly string[] {
  text = `${head}${call.replace('|', '')}\n}`;
  version += 1;
  const { entries = [] } =
    service.getCompletionsAtPosition(file, head.length + call.indexOf('|'), {}) ?? {};
  return entries.filter(({ kind }) => kind === 'string').map(({ name }) => name);
}

const all = [...builtInCatalogue.regions.keys()].sort();

describe('before a side is written, an editor offers', () => {
  it.each([
    "notExamined(draft, { region: '|' }, 'time');",
    "normal(draft, [{ region: '|' }]);",
    "normal(draft, [{ region: 'temple', side: 'left', methods: ['palpation'] }, { region: '|' }]);",
    "present(draft, 'swelling', { region: '|' });",
    "measured(draft, 'lesion-max', { region: '|' }, '4', 'mm');",
    "noted(draft, 'Sunburn', { region: '|' });",
  ])('every region: %s', (call) => {
    expect([...offered(call)].sort()).toEqual(all);
  });

  it('of a sign the regions where it is expected', () => {
    const lids = ['lid-lower', 'lid-margin-lower', 'lid-margin-upper', 'lid-upper'];
    const call = "absent(draft, 'lid-turn.ectropion', { region: '|' });";
    expect([...offered(call)].sort()).toEqual(lids);
  });

  it('the sides of a region, and the values of an attribute', () => {
    expect(offered("present(draft, 'scar', { region: 'temple', side: '|' });")).toEqual([
      'right',
      'left',
      'both',
    ]);
    const lesion = "present(draft, 'skin-lesion', { region: 'nose-tip' }, ";
    expect(offered(`${lesion}{ attributes: { 'lesion-border': '|' } });`)).toEqual([
      'well-defined',
      'irregular',
      'ill-defined',
      'raised-rolled',
    ]);
  });
});
