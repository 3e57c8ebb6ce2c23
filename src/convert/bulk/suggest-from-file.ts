import { basename } from 'node:path';
import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import {
  type Suggestion,
  type SuggestOptions,
  suggestMapping,
} from '../suggest/suggest-mapping.ts';
import { textPieces } from './input/byte-text.ts';
import { decodeBytes } from './input/decode-unit.ts';
import { findInputs, unreadableInput } from './input/inputs.ts';

/** Characters of an export that are looked at. */
const SAMPLE = 4 * 1024 * 1024;

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
  const { inputs, issues } = await findInputs([path]);
  const [first] = inputs;
  const found: Issue[] = [...issues];
  let text = '';
  try {
    const encoding =
      options.source !== undefined && 'encoding' in options.source
        ? options.source.encoding
        : undefined;
    const {
      pieces,
      decoded,
      issues: faults,
    } = await textPieces(first?.open(() => {}) ?? nothing(), encoding);
    append(found, faults);
    for await (const piece of pieces) {
      text += piece;
      if (text.length >= SAMPLE) break;
    }
    // The last line may be cut in two.
    if (text.length >= SAMPLE) text = text.slice(0, text.lastIndexOf('\n') + 1);
    if (!decoded) text = decodeBytes(text, encoding).text;
  } catch (error) {
    found.push(unreadableInput(basename(path), error));
  }
  const suggestion = suggestMapping(text, options);
  return { ...suggestion, issues: [...found, ...suggestion.issues] };
}

async function* nothing(): AsyncGenerator<Buffer> {}
