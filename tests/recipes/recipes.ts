import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDisplay, addRow, insert, readScratch, write } from './scratch.ts';

/** All that is invented here, for the recipes alone: nothing of it is said of any patient. */
const invented = { source: 'Invented for the test of the recipes', evidence: 'memory' };

export function addRegion(): void {
  addRow('regions', {
    code: 'smell-cleft',
    display: 'Olfactory cleft',
    parent: 'nose',
    section: 'nose',
    laterality: 'paired',
    methods: ['inspection', 'function-test'],
    ...invented,
  });
}

export function addRegionDisplay(): void {
  addDisplay('de', 'regions', 'smell-cleft', 'Riechspalte');
}

export function addSign(): void {
  addRow('findings', {
    code: 'smell-crust',
    display: 'Crust in the olfactory cleft',
    regions: ['smell-cleft'],
    ...invented,
  });
  addDisplay('de', 'findings', 'smell-crust', 'Kruste in der Riechspalte');
}

const facets = [
  'statement',
  'build',
  'export',
  'read',
  'page',
  'flat',
  'check',
  'convert',
  'sample',
];

/** A line in a registry: its file, what it stands before, and the line. */
export type Line = readonly [file: string, anchor: string, text: string];

/** Lines that the compiler asks for: without one of them the copy does not compile. */
export const registryLines: readonly Line[] = [
  ['src/model/statement.ts', '  | Image;', '  | SmellTest\n'],
  ['src/kinds/registries/forms.ts', '  image: imageForm', "  'smell-test': smellTestForm,\n"],
  [
    'src/kinds/registries/meanings.ts',
    '  image: imageMeaning',
    "  'smell-test': smellTestMeaning,\n",
  ],
  [
    'src/kinds/registries/to-observation.ts',
    '  image: imageExport',
    "  'smell-test': smellTestExport,\n",
  ],
  [
    'src/kinds/registries/from-observation.ts',
    '  image: imageReader',
    "  'smell-test': smellTestReader,\n",
  ],
  ['src/kinds/registries/pages.ts', '  image: imagePage', "  'smell-test': smellTestPage,\n"],
  ['src/kinds/registries/flats.ts', '  image: imageFlat', "  'smell-test': smellTestFlat,\n"],
  ['src/kinds/registries/checks.ts', '  image: imageCheck', "  'smell-test': smellTestCheck,\n"],
  ['src/kinds/registries/samples.ts', '  image: imageSample', "  'smell-test': smellTestSample,\n"],
  [
    'src/kinds/registries/conversions.ts',
    '  condition: conditionTarget',
    "  'smell-test': smellTestTarget,\n",
  ],
  [
    'src/kinds/registries/conversions.ts',
    '  image: imageConversion',
    "  'smell-test': smellTestConversion,\n",
  ],
  ['src/kinds/registries/subject-tables.ts', "  image: 'items'", "  'smell-test': 'testPoints',\n"],
  ['src/kinds/registries/counted-as.ts', '  image: (', "  'smell-test': ({ kind }) => kind,\n"],
  ['src/convert/mapping/target.ts', '  | FunctionTestTarget\n', '  | SmellTarget\n'],
  // A group of test points of its own.
  ['src/terminology/types.ts', " 'sensation' | 'facial-movement'", " 'smell' |"],
  ['src/kinds/sensation/sample.ts', '  function: drawFunctionTests', '  smell: drawSmellTests,\n'],
  [
    'src/convert/suggest/targets.ts',
    '  function: (test',
    "  smell: (test) => ({ kind: 'smell-test', test, words: {} }),\n",
  ],
  [
    'src/testing/formats/item-targets.ts',
    '  function: ({ code',
    "  smell: ({ code: test, results }, catalogue) => [\n    [itemCodes.smell(test), { kind: 'smell-test', test, words: testWords(results, catalogue) }],\n  ],\n",
  ],
  [
    'tests/report/told-by-kind/tests.ts',
    "  'function-test': {\n    sides",
    `  'smell-test': {
    sides: bySide((side) => ({
      statement: { kind: 'smell-test', test: 'smell-coffee', side, result: 'smell-lost' },
      ...ofPoint(side),
      section: 'tests',
      ...(side === 'both'
        ? { line: 'Not smelled – right and left: Smell of coffee' }
        : answered('Smell of coffee', side, 'Not smelled')),
      map: { 'Olfactory cleft': paired(side, 'said') },
    })),
    forms: [],
  },
`,
  ],
  [
    'tests/export/overread.ts',
    "  'function-test': (",
    "  'smell-test': (of: Extract<Statement, { kind: 'smell-test' }>) => of.result === 'smell-lost',\n",
  ],
  [
    'tests/testing/formats/said.ts',
    "    case 'function-test':",
    "    case 'smell-test':\n      return [kind, ...place, statement.test, statement.reason?.code ?? statement.result];\n",
  ],
];

/** Lines without which a registry's line does not resolve. */
const further: readonly Line[] = [
  [
    'src/model/statement.ts',
    'import type { Symptom }',
    "import type { SmellTest } from '../kinds/smell-test/statement.ts';\n",
  ],
  [
    'src/model/statement.ts',
    'export type { Symptom }',
    "export type { SmellTest } from '../kinds/smell-test/statement.ts';\n",
  ],
  ...(
    [
      ['forms', 'smellTestForm', 'statement'],
      ['meanings', 'smellTestMeaning', 'statement'],
      ['to-observation', 'smellTestExport', 'export'],
      ['from-observation', 'smellTestReader', 'read'],
      ['pages', 'smellTestPage', 'page'],
      ['flats', 'smellTestFlat', 'flat'],
      ['checks', 'smellTestCheck', 'check'],
      ['samples', 'smellTestSample', 'sample'],
      ['conversions', 'smellTestConversion, smellTestTarget', 'convert'],
    ] as const
  ).map(
    ([file, names, facet]): Line => [
      `src/kinds/registries/${file}.ts`,
      'import { symptom',
      `import { ${names} } from '../smell-test/${facet}.ts';\n`,
    ],
  ),
  [
    'src/kinds/registries/builders.ts',
    'export { symptom }',
    "export { smelled } from '../smell-test/build.ts';\n",
  ],
  ['src/index.ts', '  symptom,\n  tested,', '  smelled,\n'],
  [
    'src/convert/mapping/target.ts',
    '/** A number. The unit stands in the value',
    "/** Words: the results of the test. */\nexport interface SmellTarget extends Sided {\n  readonly kind: 'smell-test';\n  readonly test: Code;\n  readonly words: Words;\n}\n\n",
  ],
  [
    'src/kinds/sensation/sample.ts',
    'import type { ModalityResult',
    "import { drawSmellTests } from '../smell-test/sample.ts';\n",
  ],
  [
    'src/testing/formats/item.ts',
    '  measurement: (measure',
    `  smell: (test: Code): string => \`smell:\${test}\`,\n`,
  ],
  [
    'src/generate/terminology/code-types.ts',
    "  FunctionTestTypes: ['function']",
    "  SmellTypes: ['smell'],\n",
  ],
  [
    'src/generate/terminology/code-types.ts',
    "  record(\n    'MeasureTypes'",
    `  record(
    'SmellTypes',
    'Smell tests and their results.',
    pointsOf('SmellTypes').map(
      (row) =>
        \`\${quoted(row.code)}: { \${laterality(row.laterality)}; result: \${union(row.results ?? [])} };\`,
    ),
  ),
`,
  ],
  [
    'tests/kinds/meaning.test.ts',
    "  [\n    'a test passed'",
    "  [\n    'a smell lost',\n    { kind: 'smell-test', test: 'smell-coffee', side: 'left', result: 'smell-lost' },\n    ['states'],\n  ],\n",
  ],
];

export function addKind(): void {
  for (const facet of facets) {
    const text = readFileSync(join(import.meta.dirname, 'smell-test', `${facet}.txt`), 'utf8');
    write(`src/kinds/smell-test/${facet}.ts`, text);
  }
  addRow('test-results', { code: 'smelled', display: 'Smelled', usual: true, ...invented });
  addRow('test-results', { code: 'smell-lost', display: 'Not smelled', ...invented });
  addRow('test-points', {
    code: 'smell-coffee',
    display: 'Smell of coffee',
    group: 'smell',
    section: 'nose',
    region: 'smell-cleft',
    laterality: 'paired',
    results: ['smelled', 'smell-lost', 'not-tested'],
    ...invented,
  });
  addDisplay('de', 'test-results', 'smelled', 'Gerochen');
  addDisplay('de', 'test-results', 'smell-lost', 'Nicht gerochen');
  addDisplay('de', 'test-points', 'smell-coffee', 'Riechprobe mit Kaffee');
  for (const line of [...further, ...registryLines]) insert(...line);
}

export function addIssueCode(): void {
  insert(
    'src/issues/codes.ts',
    "  'missing-reason': [",
    "  'nostrils-together': ['business-rule', 'both nostrils tested at once, without a word on why'],\n",
  );
  for (const [language, says] of [
    ['english', 'both nostrils were tested at once, without a note'],
    ['german', 'beide Seiten wurden zugleich geprüft, ohne Anmerkung'],
  ]) {
    insert(
      `src/issues/${language}/record-meaning.ts`,
      "  'missing-reason': {",
      `  'nostrils-together': { unsaid: '${says}' },\n`,
    );
  }
}

export function addRule(): void {
  write(
    'src/checks/rules/r99-smell-sides.ts',
    `import { ruleTitles } from '../../issues/english/rules.ts';
import type { ConsistencyRule } from '../rule.ts';

/** Fires when a smell is lost and nobody says what the olfactory cleft looks like. */
export const r99SmellSides: ConsistencyRule = {
  id: 'R99',
  title: ruleTitles.R99,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-statement',
  source: 'invented for the test of the recipes',
  evidence: 'common-practice',
  run: ({ index }) =>
    index.all('smell-test').map((one) => ({
      outcome:
        one.reason !== undefined
          ? 'not-evaluable'
          : one.result === 'smell-lost'
            ? 'fires'
            : 'does-not-fire',
      on: one.key,
      inputsUsed: [one.key],
      inputsMissing: one.reason === undefined ? [] : ['a result'],
      text: 'A smell was lost.',
    })),
};
`,
  );
  insert(
    'src/checks/rules.ts',
    '\n/**\n * Every rule',
    "import { r99SmellSides } from './rules/r99-smell-sides.ts';\n",
  );
  insert('src/checks/rules.ts', '];', '  r99SmellSides,\n');
  insert('src/issues/english/rules.ts', '} as const', "  R99: 'Smell lost',\n");
  insert('src/issues/german/rules.ts', '};', "  R99: 'Geruch verloren',\n");
  const smelled = (result: string): object => ({
    kind: 'smell-test',
    key: 'coffee',
    test: 'smell-coffee',
    side: 'left',
    result,
    ...(result === 'not-tested' && { reason: { code: 'unable-pain' } }),
  });
  const cases = [
    ['firing', 'smell-lost', 'fires'],
    ['not-firing', 'smelled', 'does-not-fire'],
    ['not-evaluable', 'not-tested', 'not-evaluable'],
    ['boundary', 'smelled', 'does-not-fire'],
  ].map(([kind, result = '', outcome]) => ({
    name: `${kind}: a smell test with the result ${result}`,
    kind,
    exam: { statements: [smelled(result)] },
    expect: [{ id: 'R99:coffee', outcome }],
  }));
  write(
    'tests/cases/checks/R99-smell-sides.json',
    JSON.stringify({ rule: 'R99', source: 'invented for the test of the recipes', cases }, null, 2),
  );
}

export function addSetting(): void {
  insert(
    'src/checks/settings/check-settings.ts',
    '  /** What only the clinician can judge and',
    '  /** Let smell be asked for. Default: no. */\n  readonly smellAsked?: boolean;\n',
  );
}

/** A language, with the words of the German one: what is tried is that it has a place everywhere. */
export function addLanguage(): void {
  const words = JSON.parse(readScratch('terminology/languages/de.json'));
  write(
    'terminology/languages/nl.json',
    JSON.stringify({ ...words, language: 'nl', title: 'Nederlands' }, null, 1),
  );
  addDisplay('nl', 'test-points', 'smell-coffee', 'Reuktest met koffie');
  write(
    'src/terminology/languages/nl.ts',
    "import type { Language } from './language.ts';\nimport { language } from '../tables/language-nl.ts';\n\nexport const dutch: Language = language;\n",
  );
  write(
    'src/report/words/dutch.ts',
    "import type { ReportWords } from './report-words.ts';\nimport { germanWords } from './german.ts';\n\nexport const dutchWords: ReportWords = { ...germanWords, patient: 'Patiënt' };\n",
  );
  insert(
    'src/cli/language.ts',
    "  ['de', {",
    "  ['nl', { displays: dutch, words: dutchWords }],\n",
  );
  insert(
    'src/cli/language.ts',
    'import { englishWords }',
    "import { dutchWords } from '../report/words/dutch.ts';\n",
  );
  insert(
    'src/cli/language.ts',
    'import { type OptionTable',
    "import { dutch } from '../terminology/languages/nl.ts';\n",
  );
}
