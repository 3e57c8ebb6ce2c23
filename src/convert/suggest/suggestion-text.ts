import { issueText } from '../../issues/issue.ts';
import type { Suggestion } from './suggest-mapping.ts';

/**
 * Writes a suggestion as the text of a mapping file.
 *
 * @param suggestion From `suggestFromFile`.
 * @returns The mapping as JSON, with what is still open as comments before it.
 * @example
 * const file = suggestionText(await suggestFromFile('old.csv'));
 */
export function suggestionText({ mapping, issues }: Suggestion): string {
  const open = issues.map((found) => `//   ${issueText(found).replace(/\s+/g, ' ')}`);
  const head = [
    '// A first mapping, made from a sample. Check every line of it against the export and its makers.',
    ...(open.length > 0 ? ['// Still open:', ...open] : []),
  ];
  return `${head.join('\n')}\n${JSON.stringify(mapping, undefined, 2)}\n`;
}
