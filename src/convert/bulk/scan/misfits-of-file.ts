import type { WrittenMapping } from '../../mapping/mapping.ts';
import { type MisfitOptions, type Misfits, misfits } from '../../scan/misfits.ts';
import { sampleOfFile, sourceOf } from './sample-of-file.ts';

/**
 * Compares a mapping with the beginning of a file, as `misfits` does.
 *
 * @param path The file; `.gz` and `.zip` are opened.
 * @param mapping The mapping that fitted before.
 * @param options The catalogue and the budget.
 * @returns What does not fit. A file that cannot be read is an issue.
 * @example
 * const { missing } = await misfitsOfFile('new.csv', mapping);
 */
export async function misfitsOfFile(
  path: string,
  mapping: WrittenMapping,
  options: MisfitOptions = {},
): Promise<Misfits> {
  const { text, issues } = await sampleOfFile(path, sourceOf(mapping));
  const found = misfits(text, mapping, options);
  return { ...found, issues: [...issues, ...found.issues] };
}
