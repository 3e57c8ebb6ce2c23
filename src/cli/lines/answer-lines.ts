import { linesOf } from '../../convert/bulk/input/line-splitter.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import { flagOption, type OptionTable } from '../arguments.ts';
import type { Call } from '../command.ts';
import { exitCode } from '../exit-code.ts';
import { UsageError } from '../failure.ts';
import { recordOf } from './record-line.ts';

export const linesOption: OptionTable = {
  lines: { type: 'flag', help: 'One record per line from standard input, one line out for each' },
};

/** What a command makes of a document. Without a result the record is kept back, for its errors. */
export interface Answer {
  readonly exam?: string;
  readonly result?: unknown;
  readonly issues: readonly Issue[];
}

/** Throws UsageError for what has no meaning where a line knows nothing of the others. */
export function checkLinesCall({ io, files, options }: Call, without: readonly string[]): void {
  const other = without.find((name) => flagOption(options, name));
  if (other !== undefined) throw new UsageError(`--lines does not go with --${other}`);
  if (files.some((file) => file !== '-')) {
    throw new UsageError('with --lines, only standard input is read');
  }
  if (io.interactive) throw new UsageError('nothing comes from standard input');
}

/**
 * Answers each record by one line, in order and at once: `{"id", "exam", "issues", "result"}` or
 * `{"id", "quarantine"}`. Nothing in it depends on other records, on the clock or on how the input is
 * cut.
 * @returns The exit code: some records were kept back, or none
 */
export async function answerLines(
  { io }: Call,
  answer: (text: string) => Answer | Promise<Answer>,
): Promise<number> {
  let keptBack = false;
  for await (const line of linesOf(io.stdin)) {
    const record = recordOf(line);
    if ('handedOn' in record) {
      keptBack = true;
      await io.out(`${record.handedOn}\n`);
      continue;
    }
    const { head, text } = record;
    const { exam, result, issues }: Answer =
      record.issues.length > 0 ? { issues: record.issues } : await answered(text, answer);
    keptBack ||= result === undefined;
    const kept = { reason: reasonOf(issues), issues, raw: text };
    const body =
      result === undefined
        ? { quarantine: kept }
        : { ...(exam !== undefined && { exam }), issues, result };
    await io.out(`${toJson({ ...head, ...body })}\n`);
  }
  return keptBack ? exitCode.keptBack : exitCode.clean;
}

/** A fault of ours on one record is told in its answer, so that it ends no other. */
async function answered(
  text: string,
  answer: (text: string) => Answer | Promise<Answer>,
): Promise<Answer> {
  try {
    return await answer(text);
  } catch {
    return { issues: [issue('internal-fault', [], { reason: 'record' })] };
  }
}

function reasonOf(issues: readonly Issue[]): string {
  return issues.find(({ severity }) => severity === 'error')?.code ?? 'malformed-record';
}
