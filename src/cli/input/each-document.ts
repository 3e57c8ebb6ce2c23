import { fromJson } from '../../fhir/json/from-json.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { failure, hasErrors, type Issue } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { fromLine, issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { outputTo } from '../output/output.ts';
import { type Document, documents } from './documents.ts';

/** What a command makes of one document: a text to write, and what there is to say. */
export interface StepResult {
  readonly text?: string;
  readonly issues: readonly Issue[];
}

export interface DocumentStep {
  readonly run: (value: unknown, document: Document) => Promise<StepResult>;
  /** What stands behind the texts of all documents. */
  readonly end?: () => string;
  /** What to write for a document that is not JSON; nothing, where left out. */
  readonly unread?: (document: Document, issues: readonly Issue[]) => string;
}

/**
 * Takes the documents of a call one by one through `step`: texts go to the output, issues to
 * standard error. A document that fails stops no other. A file is written only if something came out.
 * Exit code 1 when any issue is an error.
 */
export function eachDocument(call: Call, step: DocumentStep): Promise<number> {
  return eachText(call, (document) => resultOf(document, step), step.end);
}

/** The same with what a command makes of the text of a document, which it reads itself. */
export function eachText(
  call: Call,
  step: (document: Document) => Promise<StepResult>,
  textAtEnd: () => string = () => '',
): Promise<number> {
  return eachOf(call, documents(call.io, call.files), step, textAtEnd);
}

/** The same with documents that a command takes from the files in its own way. */
export async function eachOf<Each extends Omit<Document, 'text'>>(
  { io, options }: Call,
  all: AsyncIterable<Each>,
  step: (document: Each) => Promise<StepResult>,
  textAtEnd: () => string = () => '',
): Promise<number> {
  const format = issueFormatOf(options);
  const output = outputTo(io, textOption(options, 'out'));
  let failed = false;
  let written = false;
  try {
    for await (const document of all) {
      const { text, issues } = await step(document);
      await writeIssues(io, format, nameOf(document), fromLine(document.line, issues));
      failed ||= hasErrors(issues);
      if (text === undefined) continue;
      await output.write(text);
      written = true;
    }
    const end = textAtEnd();
    if (end !== '') {
      await output.write(end);
      written = true;
    }
    await (written || !failed ? output.finish() : output.discard());
  } catch (thrown) {
    await output.discard();
    throw thrown;
  }
  return failed ? 1 : 0;
}

async function resultOf(document: Document, step: DocumentStep): Promise<StepResult> {
  const read = document.issue === undefined ? fromJson(document.text) : failure([document.issue]);
  if (hasErrors(read.issues)) {
    const text = step.unread?.(document, read.issues);
    return { ...(text !== undefined && { text }), issues: read.issues };
  }
  const { text, issues } = await step.run(read.value, document);
  return { ...(text !== undefined && { text }), issues: [...read.issues, ...issues] };
}

function nameOf({ input, record }: Omit<Document, 'text'>): Pick<Document, 'input' | 'record'> {
  return { input, ...(record !== undefined && { record }) };
}

/** Whether a document is the only one of a call; several follow one another, one a line. */
export function standsAlone({ files }: Call, { record }: Document): boolean {
  return files.length <= 1 && record === undefined;
}

/** JSON over several lines for one document, on one line where several follow one another. */
export function jsonDocument(call: Call, document: Document, value: unknown): string {
  return `${toJson(value, { pretty: standsAlone(call, document) })}\n`;
}
