import { fromJson } from '../../fhir/json/from-json.ts';
import { budgets } from '../../issues/budget.ts';
import { failure, type Outcome } from '../../issues/issue.ts';
import type { Plan } from '../mapping/plan.ts';
import { type MappingOptions, prepareMapping } from './prepare-mapping.ts';

/**
 * Reads the text of a mapping file, which is JSON in which JavaScript comments are allowed. The
 * mapping is not checked yet.
 *
 * @param text The file, decoded.
 * @returns The data. It fails where the text is not JSON; issues hold the line and column.
 * @example
 * const parsed = orThrow('read the mapping', parseMappingText(text));
 */
export function parseMappingText(text: string): Outcome<unknown> {
  return fromJson(withoutComments(text.replace(/^\uFEFF/, '')), { budget: budgets.mapping });
}

/**
 * Reads a mapping file, checks the mapping and makes it ready for use.
 *
 * @param text The file, decoded; comments are allowed.
 * @param options The catalogue; see {@link MappingOptions}.
 * @returns The plan of the conversion. It fails where the text is not JSON or the mapping is not sound.
 * @example
 * const plan = orThrow('read the mapping', readMapping(text));
 */
export function readMapping(text: string, options: MappingOptions = {}): Outcome<Plan> {
  const { value, issues } = parseMappingText(text);
  if (value === undefined) return failure(issues);
  return prepareMapping(value, options);
}

/**
 * The text with comments as spaces, so that faults keep their line and column. A comment mark inside
 * a string is left alone. Goes forward only: a literal or comment that never ends is left as it is,
 * with what follows on its line or in the text, for the reader of JSON to refuse.
 */
export function withoutComments(text: string): string {
  const mark = /["/]/g;
  let made = '';
  let from = 0;
  for (let found = mark.exec(text); found !== null; found = mark.exec(text)) {
    const start = found.index;
    const end = text[start] === '"' ? literalEnd(text, start) : commentEnd(text, start);
    if (end === undefined) break;
    if (text[start] === '/' && end > start + 1) {
      made += text.slice(from, start) + text.slice(start, end).replace(/[^\n]/g, ' ');
      from = end;
    }
    mark.lastIndex = end;
  }
  return made + text.slice(from);
}

/** Behind the closing quote, or the end of the line where there is none. */
function literalEnd(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length && text[at] !== '"' && text[at] !== '\n') at += text[at] === '\\' ? 2 : 1;
  return Math.min(at + 1, text.length);
}

/** Behind the comment that begins here, undefined where it never ends; behind the slash where none does. */
function commentEnd(text: string, start: number): number | undefined {
  if (text[start + 1] === '/') {
    const end = text.indexOf('\n', start);
    return end === -1 ? text.length : end;
  }
  if (text[start + 1] !== '*') return start + 1;
  const end = text.indexOf('*/', start + 2);
  return end === -1 ? undefined : end + 2;
}
