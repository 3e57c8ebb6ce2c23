import type { WrittenMapping } from '../mapping/mapping.ts';
import type { Source } from '../mapping/source.ts';
import { type MisfitOptions, type Misfits, misfits } from '../scan/misfits.ts';
import { sampleOfFile } from './sample-of-file.ts';

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
  // Whatever a preset says of it, the encoding is the user's to state.
  const source = mapping.source as Source | undefined;
  const { text, issues } = await sampleOfFile(path, source);
  const found = misfits(text, mapping, options);
  return { ...found, issues: [...issues, ...found.issues] };
}
