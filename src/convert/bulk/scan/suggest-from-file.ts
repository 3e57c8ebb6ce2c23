import {
  type Suggestion,
  type SuggestOptions,
  suggestMapping,
} from '../../suggest/suggest-mapping.ts';
import { sampleOfFile } from './sample-of-file.ts';

/**
 * Makes a first mapping from the beginning of a file. Names are placed by the lexicon, only plain
 * words get a meaning, and a side, a denial, a unit or the order of day and month is never guessed; a
 * person finishes it.
 *
 * @param path The file; `.gz` and `.zip` are opened.
 * @param options How the file is read, where its beginning does not show it, and the catalogue.
 * @returns The mapping as far as the file tells it, and an issue for everything left open. A file
 *   that cannot be read is an issue too.
 * @example
 * const file = suggestionText(await suggestFromFile('old.csv'));
 */
export async function suggestFromFile(
  path: string,
  options: SuggestOptions = {},
): Promise<Suggestion> {
  const { text, issues } = await sampleOfFile(path, options.source);
  const suggestion = suggestMapping(text, options);
  return { ...suggestion, issues: [...issues, ...suggestion.issues] };
}
