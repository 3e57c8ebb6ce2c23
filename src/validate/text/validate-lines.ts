import type { Issue } from '../../issues/issue.ts';
import type { ValidateOptions, Validation } from '../validate-bundle.ts';
import type { ValidatedVersion } from '../versions/version.ts';
import { runOnText } from './validate-text.ts';

/** The verdict on one line; positions of its issues count lines from the beginning of the input. */
export interface LineValidation extends Validation {
  /** From 1. */
  readonly line: number;
}

/**
 * Validates each line that is not blank. At most one line is held at a time.
 * @see https://hl7.org/fhir/R4/nd-json.html
 */
export async function* runOnLines(
  chunks: Iterable<string> | AsyncIterable<string>,
  version: ValidatedVersion,
  options?: ValidateOptions,
): AsyncGenerator<LineValidation, void, undefined> {
  let line = 0;
  for await (const text of linesOf(chunks)) {
    line += 1;
    if (text.trim() === '') continue;
    const validation = runOnText(text, version, options);
    const issues = validation.issues.map((found) => onLine(found, line));
    yield { ...validation, issues, line };
  }
}

function onLine(found: Issue, line: number): Issue {
  const { source } = found;
  return source === undefined || !('line' in source)
    ? found
    : { ...found, source: { ...source, line } };
}

async function* linesOf(
  chunks: Iterable<string> | AsyncIterable<string>,
): AsyncGenerator<string, void, undefined> {
  let pieces: string[] = [];
  for await (const chunk of chunks) {
    let from = 0;
    for (let feed = chunk.indexOf('\n'); feed !== -1; feed = chunk.indexOf('\n', from)) {
      pieces.push(chunk.slice(from, feed));
      yield pieces.join('');
      pieces = [];
      from = feed + 1;
    }
    pieces.push(chunk.slice(from));
  }
  yield pieces.join('');
}
