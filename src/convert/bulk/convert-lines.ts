import { toJson } from '../../fhir/json/to-json.ts';
import { type Issue, issue as recordIssue } from '../../issues/issue.ts';
import { quarantineEntry } from '../exams/quarantine.ts';
import { issue } from '../issue.ts';
import type { RawUnit } from '../record/record.ts';
import {
  type Converter,
  createConverter,
  type OutputLine,
  type UnitOutcome,
} from './convert-batch.ts';
import { entryUnit } from './input/entry-unit.ts';
import { type Line, linesOf } from './input/line-splitter.ts';
import type { ConvertSettings } from './options.ts';

/** What became of the lines. */
export interface LineResult {
  /** Lines read, and of them those that were converted. */
  readonly read: number;
  readonly converted: number;
  /** About the mapping; with an error nothing was read. */
  readonly issues: readonly Issue[];
}

/**
 * Converts line by line, one in and one out, for a program that hands out the work. A line is the
 * text of one exam as JSON: `{"raw": "...", "id": ...}`, for CSV with `header`. Each gives one line
 * at once: `{"id": ..., "exam": ..., "result": ...}` with a bundle, a list of resources or an exam,
 * or `{"id": ..., "quarantine": ...}`; both with `issues`. `id` is whatever came in. Lines are not
 * compared with each other: that an exam comes twice is for the caller to find. The answer to a line is
 * the same whatever stands before it, in however many calls the lines are given.
 *
 * @param input Bytes of the lines in UTF-8, cut anywhere.
 * @param settings Mapping and form of the results; see {@link ConvertSettings}.
 * @param write Takes each line of the result, with its line feed, and is awaited.
 * @returns How many lines were read and converted. With an error about the mapping nothing was
 *   read.
 * @throws {Error} What `input` or `write` throws.
 * @example
 * const input = [new TextEncoder().encode(text)];
 * const asStream = async function* () { yield* input; };
 * await convertLines(asStream(), { mapping }, async (line) => console.log(line));
 */
export async function convertLines(
  input: AsyncIterable<Uint8Array>,
  settings: ConvertSettings,
  write: (line: string) => Promise<void>,
): Promise<LineResult> {
  const { convert, issues } = await createConverter({ ...settings, ledger: false });
  if (convert === undefined) return { read: 0, converted: 0, issues };
  let read = 0;
  let converted = 0;
  for await (const line of linesOf(input)) {
    const answer = answerOf(line, convert);
    read += 1;
    if (answer.converted) converted += 1;
    await write(`${answer.text}\n`);
  }
  return { read, converted, issues };
}

function answerOf(
  line: Line,
  convert: Converter['convert'],
): { readonly text: string; readonly converted: boolean } {
  // Where the line stands in this input says nothing: the same record is answered alike anywhere.
  const unit = entryUnit({ ...line, number: 1 });
  const id = idOf(line.text);
  const outcome = outcomeOf(unit, convert);
  const exam = outcome?.exam;
  if (exam === undefined) {
    const entry = quarantineEntry(unit, outcome.issues, outcome.counts?.fields ?? 0);
    return { text: toJson({ ...id, quarantine: entry }), converted: false };
  }
  const head = JSON.stringify({ ...id, exam: exam.id, issues: outcome.issues });
  // The result is text already, with its decimals as stated.
  return { text: `${head.slice(0, -1)},"result":${resultText(exam.lines)}}`, converted: true };
}

/** A fault of ours on one record keeps that record back, and ends no other. */
function outcomeOf(
  unit: RawUnit,
  convert: Converter['convert'],
): Partial<UnitOutcome> & Pick<UnitOutcome, 'issues'> {
  try {
    const [outcome] = convert([unit]);
    return outcome ?? { issues: [issue('malformed-record', [], { reason: 'line' })] };
  } catch {
    return { issues: [recordIssue('internal-fault', [], { reason: 'record' })] };
  }
}

/** A bundle and an exam are one line, resources several. */
function resultText(lines: readonly OutputLine[]): string {
  const [first] = lines;
  const single = first?.file === 'bundles.ndjson' || first?.file === 'exams.ndjson';
  return single ? first.text : `[${lines.map(({ text }) => text).join(',')}]`;
}

/** The caller's name for a line, as it came. */
function idOf(bytes: string): { readonly id?: unknown } {
  try {
    const value: unknown = JSON.parse(Buffer.from(bytes, 'latin1').toString());
    return typeof value === 'object' && value !== null && 'id' in value ? { id: value.id } : {};
  } catch {
    return {};
  }
}
