import { type Issue, issueText, type Severity } from '../../issues/issue.ts';
import { actingText, shownText } from '../../issues/shown-text.ts';
import { toOperationOutcome } from '../../validate/to-operation-outcome.ts';
import { type OptionValues, textOption } from '../arguments.ts';
import type { Document } from '../input/documents.ts';
import type { CliIo } from '../io.ts';

export type IssueFormat = 'text' | 'json' | 'operation-outcome';

export function issueFormatOf(options: OptionValues): IssueFormat {
  const format = textOption(options, 'format');
  return format === 'json' || format === 'operation-outcome' ? format : 'text';
}

/** `file` or `file:3`, for the third document of a file with one document a line. */
export function documentName({ input, record }: Pick<Document, 'input' | 'record'>): string {
  return shownText(record === undefined ? input : `${input}:${record}`);
}

/**
 * Issues of one document to standard error: a line each as text or JSON, or one OperationOutcome a
 * document, all without line breaks inside.
 */
export async function writeIssues(
  io: CliIo,
  format: IssueFormat,
  document: Pick<Document, 'input' | 'record'>,
  issues: readonly Issue[],
): Promise<void> {
  if (issues.length === 0) return;
  await io.err(issueBlock(format, document, issues));
}

function issueBlock(
  format: IssueFormat,
  document: Pick<Document, 'input' | 'record'>,
  issues: readonly Issue[],
): string {
  switch (format) {
    case 'json':
      return issues.map((found) => `${shownJson({ ...document, ...found })}\n`).join('');
    case 'operation-outcome':
      return `${shownJson(toOperationOutcome(issues))}\n`;
    case 'text': {
      const name = documentName(document);
      return issues.map((found) => `${name}: ${issueLine(found)}\n`).join('');
    }
  }
}

function issueLine(found: Issue): string {
  const { source, received } = found;
  let line = issueText(found);
  if (received !== undefined) line += ` got ${shownText(JSON.stringify(received))}`;
  if (source !== undefined && 'line' in source && source.sheet !== undefined) {
    line += ` at sheet ${shownText(source.sheet)}, ${source.cell ?? `row ${source.line}`}`;
  } else if (source !== undefined && 'line' in source) {
    line += ` at line ${source.line}`;
    if (source.column !== undefined) line += `, column ${source.column}`;
  } else if (source !== undefined) {
    line += ` at segment ${source.segmentIndex} (${source.segment})`;
    if (source.field !== undefined) line += `, field ${source.field}`;
  }
  return line;
}

/** JSON of one line, with what a terminal would act on as escapes that JSON has. */
function shownJson(value: unknown): string {
  return JSON.stringify(value).replace(actingText, (found) => [...found].map(jsonEscape).join(''));
}

function jsonEscape(character: string): string {
  return character
    .split('')
    .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .join('');
}

/** The same issues with lines counted from the beginning of the input. */
export function fromLine(first: number, issues: readonly Issue[]): Issue[] {
  return issues.map((found) =>
    found.source !== undefined && 'line' in found.source
      ? { ...found, source: { ...found.source, line: found.source.line + first - 1 } }
      : found,
  );
}

/** `2 errors, 1 warning`; empty for none. */
export function countText(issues: readonly Issue[]): string {
  return countsText(countsOf(issues));
}

export type Counts = Readonly<Record<Severity, number>>;

export function countsOf(issues: readonly Issue[]): Counts {
  const counts = { error: 0, warning: 0, information: 0 };
  for (const { severity } of issues) counts[severity] += 1;
  return counts;
}

export function countsText(counts: Counts): string {
  const parts: string[] = [];
  for (const [severity, one, many] of severities) {
    const count = counts[severity];
    if (count > 0) parts.push(`${count} ${count === 1 ? one : many}`);
  }
  return parts.join(', ');
}

const severities: readonly (readonly [Severity, string, string])[] = [
  ['error', 'error', 'errors'],
  ['warning', 'warning', 'warnings'],
  ['information', 'remark', 'remarks'],
];
