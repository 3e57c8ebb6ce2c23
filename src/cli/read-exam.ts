import { hasErrors, type Outcome } from '../issue.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import type { CliIo } from './io.ts';
import { type IssueFormat, writeIssues } from './issue-writer.ts';
import { readJson } from './read-json.ts';

/** The one exam of a file, with its issues told; undefined where there is none. */
export async function readExam(
  io: CliIo,
  file: string,
  { format, includeValues }: { readonly format: IssueFormat; readonly includeValues: boolean },
): Promise<Exam | undefined> {
  const json = await readJson(io, file);
  const { value, issues }: Outcome<Exam> = hasErrors(json.issues)
    ? { issues: json.issues }
    : parseExam(json.value, { includeValues });
  await writeIssues(io, format, { input: file }, issues);
  return value;
}
