import { join } from 'node:path';
import ts from 'typescript';
import { codeEntries, root } from './fresh.ts';

const printer = ts.createPrinter({ removeComments: true });

/** The public names of every entry with their declarations, from the built types; no comments. */
export function apiText(): string {
  const files = codeEntries.map(({ types }) => join(root, types));
  const program = ts.createProgram(files, {
    module: ts.ModuleKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    skipLibCheck: true,
    types: [],
  });
  const checker = program.getTypeChecker();
  const parts = codeEntries.map(({ name, types }) => {
    const source = program.getSourceFile(join(root, types));
    const module = source && checker.getSymbolAtLocation(source);
    if (module === undefined) throw new TypeError(`cannot read the types of ${name}`);
    const lines = checker
      .getExportsOfModule(module)
      .map((symbol) => declarationText(symbol, checker))
      .sort();
    return `# ${name}\n\n${lines.join('\n')}\n`;
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
  return `${symbol.name}: ${texts.join('\n')}`;
}
