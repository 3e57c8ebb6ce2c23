import { join } from 'node:path';
import ts from 'typescript';
import { codeEntries, root } from './fresh.ts';

const printer = ts.createPrinter({ removeComments: true });

export interface EntryNames {
  /** As it is imported: `face-neck-fhir/report`. */
  readonly entry: string;
  /** Public names with their declarations, without comments. */
  readonly declarations: ReadonlyMap<string, string>;
}

/** The public names of every entry, from the built types. */
export function publicNames(): EntryNames[] {
  const files = codeEntries.map(({ types }) => join(root, types));
  const program = ts.createProgram(files, {
    module: ts.ModuleKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    skipLibCheck: true,
    types: [],
  });
  const checker = program.getTypeChecker();
  return codeEntries.map(({ name, types }) => {
    const source = program.getSourceFile(join(root, types));
    const module = source && checker.getSymbolAtLocation(source);
    if (module === undefined) throw new TypeError(`cannot read the types of ${name}`);
    const symbols = checker.getExportsOfModule(module);
    const texts = symbols.map((one) => [one.name, declarationText(one, checker)] as const);
    return { entry: name, declarations: new Map(texts) };
  });
}

/** The same as one text, to be compared. */
export function apiText(): string {
  const parts = publicNames().map(({ entry, declarations }) => {
    const lines = [...declarations].map(([name, text]) => `${name}: ${text}`).sort();
    return `# ${entry}\n\n${lines.join('\n')}\n`;
  });
  return parts.join('\n');
}

function declarationText(symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const isAlias = (symbol.flags & ts.SymbolFlags.Alias) !== 0;
  const target = isAlias ? checker.getAliasedSymbol(symbol) : symbol;
  const texts = (target.declarations ?? []).map((declaration) => {
    // A constant's declaration is a part of its statement, which says const.
    const node = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
    return printer.printNode(ts.EmitHint.Unspecified, node, node.getSourceFile());
  });
  return texts.join('\n');
}
