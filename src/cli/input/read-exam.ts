import { fromJson } from '../../fhir/json/from-json.ts';
import { failure, hasErrors, type Outcome, success } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { parseExam } from '../../model/parse-exam.ts';
import type { CliIo } from '../io.ts';
import { fromLine, type IssueFormat, writeIssues } from '../output/issue-writer.ts';
import { documents } from './documents.ts';

/** The JSON of a file; no value where it holds none, or more than one document. */
export async function readJson(io: CliIo, file: string): Promise<Outcome<unknown>> {
  const texts: string[] = [];
  let line = 1;
  for await (const document of documents(io, [file])) {
    if (document.issue !== undefined) return failure([document.issue]);
    if (texts.length === 0) line = document.line;
    texts.push(document.text);
  }
  const read = fromJson(texts.join('\n'));
  const issues = fromLine(line, read.issues);
  return hasErrors(issues) ? failure(issues) : success(read.value, issues);
}

/** The one exam of a file, with its issues told; undefined where there is none. */
export async function readExam(
  io: CliIo,
  file: string,
  { format, includeValues }: { readonly format: IssueFormat; readonly includeValues: boolean },
): Promise<Exam | undefined> {
  const json = await readJson(io, file);
  const { value, issues }: Outcome<Exam> = hasErrors(json.issues)
    ? failure(json.issues)
    : parseExam(json.value, { includeValues });
  await writeIssues(io, format, { input: file }, issues);
  return value;
}
