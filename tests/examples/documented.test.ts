import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { publicFunctions } from '../package/public-functions.ts';

/** What the comment of a function lacks. Types stand in its signature and not in the comment. */
function missingIn(declaration: ts.FunctionDeclaration): string[] {
  const tags = ts.getJSDocTags(declaration);
  const parameters = declaration.parameters.filter(
    (parameter) => !ts.getJSDocParameterTags(parameter).some(says),
  );
  const description = ts
    .getJSDocCommentsAndTags(declaration)
    .some((one) => ts.isJSDoc(one) && says(one));
  const isVoid = declaration.type?.kind === ts.SyntaxKind.VoidKeyword;
  const missing = [
    ...parameters.map(({ name }) => `@param ${name.getText()}`),
    ...(isVoid || tags.some((tag) => ts.isJSDocReturnTag(tag) && says(tag)) ? [] : ['@returns']),
    ...(tags.some(({ tagName }) => tagName.text === 'example') ? [] : ['@example']),
  ];
  return description ? missing : ['a description', ...missing];
}

function says({ comment }: ts.JSDoc | ts.JSDocTag): boolean {
  return (ts.getTextOfJSDocComment(comment) ?? '').trim() !== '';
}

describe('the comments of public functions', () => {
  const functions = publicFunctions();

  it('are found in every entry that has functions', () => {
    const entries = new Set(functions.map(({ entry }) => entry));
    expect([...entries]).toEqual(
      expect.arrayContaining(['face-neck-fhir', 'face-neck-fhir/report', 'face-neck-fhir/testing']),
    );
  });

  it.each(functions)('$name ($file) tells parameters, result and an example', ({ declaration }) => {
    expect(missingIn(declaration)).toEqual([]);
  });

  it('are missed where they are missing', () => {
    const text =
      '/** Adds. @param a One number. */ export function add(a: number, b: number): number;';
    const source = ts.createSourceFile('add.ts', text, ts.ScriptTarget.ES2022, true);
    const [add] = source.statements;
    if (add === undefined || !ts.isFunctionDeclaration(add)) throw new Error('no function');
    expect(missingIn(add)).toEqual(['@param b', '@returns', '@example']);
  });
});
