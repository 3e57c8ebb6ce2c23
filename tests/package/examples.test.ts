import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { publicNames } from './api.ts';
import { fresh, run, tsc } from './fresh.ts';
import { type PublicFunction, publicFunctions } from './public-functions.ts';

const main = 'face-neck-fhir';

/** What the examples take as given, so that each is short. */
const given = `
declare const exam: import('${main}').Exam;
declare const before: import('${main}').Exam;
declare let draft: import('${main}').ExamDraft;
declare const bundle: import('${main}').AnyBundle;
declare const issues: readonly import('${main}').Issue[];
declare const mapping: import('${main}/convert/csv').WrittenMapping;
declare const validation: import('${main}/validate/r4').Validation;
declare const resource: unknown;
declare const text: string;
declare const bytes: Uint8Array;
`;

/** Each example of an entry as a function of its own, with all names of the entry and of the main one. */
function exampleFile(
  entry: string,
  functions: readonly PublicFunction[],
  names: ReadonlyMap<string, ReadonlySet<string>>,
): string {
  const own = names.get(entry) ?? new Set();
  const others = [...(names.get(main) ?? [])].filter((name) => !own.has(name));
  const examples = functions.flatMap(({ name, declaration }) =>
    examplesOf(declaration).map((code) => `// ${name}\nasync () => {\n${code}\n};`),
  );
  return [
    `import { ${[...own].join(', ')} } from '${entry}';`,
    ...(entry === main ? [] : [`import { ${others.join(', ')} } from '${main}';`]),
    ...(entry.endsWith('/arbitrary') ? ["import fc from 'fast-check';"] : []),
    given,
    ...examples,
  ].join('\n');
}

function examplesOf(declaration: ts.FunctionDeclaration): string[] {
  const tags = ts.getJSDocTags(declaration).filter(({ tagName }) => tagName.text === 'example');
  return tags.map(({ comment }) => ts.getTextOfJSDocComment(comment) ?? '');
}

it('the examples in the comments of public functions compile against the built package', () => {
  const names = new Map(
    publicNames().map(({ entry, declarations }) => [entry, new Set(declarations.keys())]),
  );
  const folder = join(fresh, 'examples');
  mkdirSync(folder, { recursive: true });
  const functions = publicFunctions();
  const files = [...names.keys()].map((entry, at) => {
    const ofEntry = functions.filter((one) => one.entry === entry);
    writeFileSync(join(folder, `${at}.ts`), exampleFile(entry, ofEntry, names));
    return `${at}.ts`;
  });
  const compilerOptions = {
    ...{ strict: true, noEmit: true, skipLibCheck: true, target: 'ES2022', module: 'NodeNext' },
    ...{ lib: ['ES2022', 'DOM'], types: [] },
  };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, files }));
  expect(run(process.execPath, [tsc, '-p', '.'], folder)).toBe('');
});
