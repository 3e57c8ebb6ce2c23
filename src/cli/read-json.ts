import { fromJson } from '../fhir/from-json.ts';
import { hasErrors, type Outcome } from '../issue.ts';
import { documents } from './documents.ts';
import type { CliIo } from './io.ts';
import { fromLine } from './issue-writer.ts';

/** The JSON of a file; no value where it holds none, or more than one document. */
export async function readJson(io: CliIo, file: string): Promise<Outcome<unknown>> {
  const texts: string[] = [];
  let line = 1;
  for await (const document of documents(io, [file])) {
    if (document.issue !== undefined) return { issues: [document.issue] };
    if (texts.length === 0) line = document.line;
    texts.push(document.text);
  }
  const read = fromJson(texts.join('\n'));
  const issues = fromLine(line, read.issues);
  return hasErrors(issues) ? { issues } : { value: read.value, issues };
}
