import { hasErrors, type Issue } from '../../../issues/issue.ts';
import { prepareConversion } from '../../any-conversion.ts';
import type { RawUnit } from '../../record/record.ts';
import { findInputs, joined } from './inputs.ts';
import { unitsOfInput } from './units-of-input.ts';

/**
 * A unit or a problem, with the name of the input that it is from. Written out, since the types behind
 * it need those of Node, which not every user of this entry has.
 */
export type CutUnit = ({ readonly unit: RawUnit } | { readonly problem: Issue }) & {
  readonly file: string;
};

/**
 * Reads files and folders and gives the text of each exam, in order, with flat memory. As a line of
 * JSON, each is what `convertLines` takes. What cannot be read is reported and passed over.
 *
 * @param paths Files and folders; `.gz` and `.zip` are opened.
 * @param mapping The mapping, which says how the files are cut.
 * @returns Units and problems in order, with the name of their file. With a mapping that is wrong,
 *   the problems of the mapping alone.
 * @example
 * for await (const one of cutFiles(['archive'], mapping)) {
 *   if ('unit' in one) console.log(JSON.stringify(one.unit));
 * }
 */
export async function* cutFiles(
  paths: readonly string[],
  mapping: unknown,
): AsyncGenerator<CutUnit> {
  const { value: conversion, issues } = prepareConversion(mapping);
  if (conversion === undefined) {
    for (const problem of issues.filter((found) => hasErrors([found]))) {
      yield { problem, file: 'mapping' };
    }
    return;
  }
  const found = await findInputs(paths);
  for (const problem of found.issues) yield { problem, file: String(problem.path[0]) };
  for (const input of conversion.joined === true ? joined(found.inputs) : found.inputs) {
    for await (const one of unitsOfInput(input, conversion, () => {})) {
      yield { ...one, file: input.name };
    }
  }
}
