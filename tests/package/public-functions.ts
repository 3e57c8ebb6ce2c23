import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';
import { codeEntries, root } from './fresh.ts';

export interface PublicFunction {
  /** The first entry that exports it: `face-neck-fhir/report`. */
  readonly entry: string;
  readonly name: string;
  /** Its source, relative to the project. */
  readonly file: string;
  readonly declaration: ts.FunctionDeclaration;
}

/** Every function that an entry of the package exports, each once; read from the sources alone. */
export function publicFunctions(): PublicFunction[] {
  const found = new Map<ts.FunctionDeclaration, PublicFunction>();
  for (const { name: entry, types } of codeEntries) {
    const file = join(root, types.replace('./dist/', 'src/').replace(/\.d\.ts$/, '.ts'));
    for (const [name, declaration] of functionsOf(file)) {
      const own = relative(root, declaration.getSourceFile().fileName);
      if (!found.has(declaration)) found.set(declaration, { entry, name, file: own, declaration });
    }
  }
  return [...found.values()];
}

const parsed = new Map<string, ts.SourceFile>();

function sourceOf(file: string): ts.SourceFile {
  const source =
    parsed.get(file) ??
    ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.ES2022, true);
  parsed.set(file, source);
  return source;
}

/** Functions that a file exports, its own and those of other files, by their public names. */
function functionsOf(file: string): Map<string, ts.FunctionDeclaration> {
  const functions = new Map<string, ts.FunctionDeclaration>();
  for (const statement of sourceOf(file).statements) {
    if (ts.isFunctionDeclaration(statement) && isExported(statement)) {
      const { text = '' } = statement.name ?? {};
      // Of overloads the first is the one with the comment.
      if (!functions.has(text)) functions.set(text, statement);
    }
    if (ts.isVariableStatement(statement) && isExported(statement)) refuseFunctions(statement);
    if (!ts.isExportDeclaration(statement) || statement.isTypeOnly) continue;
    for (const [name, declaration] of passedOn(file, statement)) functions.set(name, declaration);
  }
  return functions;
}

function passedOn(
  file: string,
  { exportClause, moduleSpecifier }: ts.ExportDeclaration,
): [string, ts.FunctionDeclaration][] {
  if (moduleSpecifier === undefined || !ts.isStringLiteral(moduleSpecifier)) {
    throw new TypeError(`${file}: expected an export with its source: export { a } from './a.ts'`);
  }
  const there = functionsOf(join(dirname(file), moduleSpecifier.text));
  if (exportClause === undefined) return [...there];
  if (!ts.isNamedExports(exportClause)) throw new TypeError(`${file}: export * as is not followed`);
  return exportClause.elements.flatMap(({ name, propertyName }) => {
    const declaration = there.get((propertyName ?? name).text);
    return declaration === undefined ? [] : [[name.text, declaration]];
  });
}

/** A constant that is a function has no place in the checks that follow. */
function refuseFunctions({ declarationList }: ts.VariableStatement): void {
  for (const { initializer, name } of declarationList.declarations) {
    if (initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))) {
      throw new TypeError(`expected a function declaration for ${name.getText()}`);
    }
  }
}

function isExported(statement: ts.FunctionDeclaration | ts.VariableStatement): boolean {
  return statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;
}
