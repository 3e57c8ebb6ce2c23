import { fromJson } from '../../fhir/json/from-json.ts';
import { failure, hasErrors, type Outcome, success } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { type ParseOptions, parseExam } from '../../model/parse-exam.ts';
import { flagOption } from '../arguments.ts';
import type { Call, Choices } from '../command.ts';
import type { CliIo } from '../io.ts';
import { fromLine, issueFormatOf, writeIssues } from '../output/issue-writer.ts';
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

/** How exams of a call are checked: by the tables of the clinic, where one is named. */
export function parseOptionsOf({ options, clinic }: Choices): ParseOptions {
  return {
    includeValues: flagOption(options, 'include-values'),
    ...(clinic && { catalogue: clinic.catalogue }),
  };
}

/** The exam that a text holds. */
export function examOfText(text: string, options: ParseOptions): Outcome<Exam> {
  const json = fromJson(text);
  if (hasErrors(json.issues)) return failure(json.issues);
  const exam = parseExam(json.value, options);
  return exam.ok ? success(exam.value, [...json.issues, ...exam.issues]) : exam;
}

/** The one exam of a file, with its issues told; undefined where there is none. */
export async function readExam(call: Omit<Call, 'files'>, file: string): Promise<Exam | undefined> {
  const json = await readJson(call.io, file);
  const { value, issues }: Outcome<Exam> = hasErrors(json.issues)
    ? failure(json.issues)
    : parseExam(json.value, parseOptionsOf(call));
  await writeIssues(call.io, issueFormatOf(call.options), { input: file }, issues);
  return value;
}
