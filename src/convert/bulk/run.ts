import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Conversion } from '../conversion.ts';
import { repeatedExam } from '../exams/convert-text.ts';
import { quarantineEntry } from '../exams/quarantine.ts';
import { issue } from '../issue.ts';
import type { RawUnit } from '../record/record.ts';
import type { UnitOutcome } from './convert-batch.ts';
import type { Input, JoinedInput } from './input/inputs.ts';
import { unitsOfInput, unitsOfQuarantine } from './input/units-of-input.ts';
import type { BulkIo, BulkOptions } from './options.ts';
import { type Checkpoint, writeCheckpoint } from './output/checkpoint.ts';
import { progressOf } from './output/progress.ts';
import { openSinks, type Sinks } from './output/sinks.ts';
import { type Counter, counter, type Tally } from './output/tally.ts';
import type { Pool } from './pool.ts';
import { readSeenIds, type SeenIds, seenFile } from './seen-ids.ts';

export interface Run {
  readonly options: BulkOptions;
  readonly io: BulkIo;
  readonly pool: Pool;
  readonly conversion: Conversion;
  readonly inputs: readonly (Input | JoinedInput)[];
  /** Told at the start of a new run. */
  readonly startIssues: readonly Issue[];
  readonly checkpoint: Checkpoint;
  /** What is to be said when the first unit of an input is seen. */
  readonly checkFirst: (unit: RawUnit) => Issue[];
}

/** Characters of input after which a batch is full, however few its units. */
const BATCH_TEXT = 1 << 20;

/** Where a batch or an issue came from, so that a checkpoint can name it. */
interface Step {
  readonly input: number;
  /** Units and problems of the input that are done once this step is. */
  readonly items: number;
  readonly name: string;
  readonly issues: readonly Issue[];
  readonly batch: readonly RawUnit[];
  readonly outcomes: Promise<readonly UnitOutcome[]>;
}

/** Reads, converts and writes all inputs, in order, and returns the numbers of the whole run. */
export async function runConversion(run: Run): Promise<Tally> {
  const { options, checkpoint, pool } = run;
  const sinks = openSinks(options.out, checkpoint.lengths);
  const seen = await readSeenIds(options.out, checkpoint.lengths);
  const count = counter(checkpoint.tally);
  const writer: Writer = { sinks, seen, count };
  const total = run.inputs.reduce((sum, { size }) => sum + size, 0);
  const progress = progressOf(run.io, total, checkpoint.tally.exams.read);
  const every = options.checkpointEvery ?? 2000;
  let bytes = 0;
  let sinceCheckpoint = 0;

  const save = async (input: number, items: number, told = true): Promise<void> => {
    await sinks.addBytes(seenFile, seen.takeNew());
    const lengths = await sinks.sync();
    const { fingerprint, format } = checkpoint;
    await writeCheckpoint(options.out, {
      format,
      fingerprint,
      input,
      items,
      told,
      lengths,
      tally: count.tally(),
    });
    sinceCheckpoint = 0;
  };
  const finish = async (step: Step): Promise<void> => {
    for (const found of step.issues) await writeIssue(found, step.name, writer);
    const outcomes = await step.outcomes;
    for (const [at, unit] of step.batch.entries()) {
      const outcome = outcomes[at];
      if (outcome !== undefined) await writeOutcome(unit, outcome, step.name, writer);
    }
    sinceCheckpoint += step.batch.length;
    progress.update(bytes, count.read());
    if (sinceCheckpoint >= every) await save(step.input, step.items);
  };

  try {
    // Before any output: a run that is stopped from here on can go on.
    await save(checkpoint.input, checkpoint.items, checkpoint.told);
    for (const found of run.startIssues) await writeIssue(found, undefined, writer);
    const waiting: Step[] = [];
    for await (const step of steps(run, (more) => {
      bytes += more;
    })) {
      waiting.push(step);
      if (waiting.length > pool.ahead) {
        const first = waiting.shift();
        if (first !== undefined) await finish(first);
      }
    }
    for (const step of waiting) await finish(step);
    for (const found of unknownExams(options, seen)) await writeIssue(found, undefined, writer);
    await save(run.inputs.length, 0);
    progress.end();
    return count.tally();
  } finally {
    await sinks.close();
  }
}

/** Confirmed proposals whose exam no input has made: what they say stands nowhere. */
function unknownExams({ confirmed = [] }: BulkOptions, seen: SeenIds): Issue[] {
  const exams = new Set(
    confirmed.flatMap((one) => (one.confirmed === undefined ? [] : [one.exam])),
  );
  return [...exams]
    .filter((exam) => seen.add(exam))
    .map(() => {
      const facts = { reason: 'proposal-exam' } as const;
      return issue('unresolved-key', ['confirmed'], facts, { severity: 'warning' });
    });
}

async function* steps(run: Run, read: (bytes: number) => void): AsyncGenerator<Step> {
  for (const [index, input] of run.inputs.entries()) {
    if (index < run.checkpoint.input) {
      read(input.size);
      continue;
    }
    const done = index === run.checkpoint.input ? run.checkpoint.items : 0;
    yield* stepsOfInput(run, input, index, done, read);
  }
}

/** Batches of one input; the first `done` units and problems are passed over. */
async function* stepsOfInput(
  run: Run,
  input: Input | JoinedInput,
  index: number,
  done: number,
  read: (bytes: number) => void,
): AsyncGenerator<Step> {
  const source =
    run.options.inputKind === 'quarantine' && !('parts' in input)
      ? unitsOfQuarantine(input, read)
      : unitsOfInput(input, run.conversion, read);
  let items = 0;
  let seenUnit = false;
  let batch: RawUnit[] = [];
  let text = 0;
  let issues: Issue[] = [];
  const step = (): Step => {
    const outcomes = run.pool.convert(batch);
    // A failure is met when the step is finished; until then it must not count as unhandled.
    outcomes.catch(() => {});
    const made = { input: index, items, name: input.name, issues, batch, outcomes };
    batch = [];
    text = 0;
    issues = [];
    return made;
  };
  for await (const found of source) {
    items += 1;
    const isFirst: boolean = 'unit' in found && !seenUnit;
    if (isFirst) seenUnit = true;
    if (items <= done) continue;
    if ('problem' in found) {
      issues.push(found.problem);
      continue;
    }
    if (isFirst) append(issues, run.checkFirst(found.unit));
    batch.push(found.unit);
    text += found.unit.raw.length;
    if (batch.length >= run.pool.batch || text >= BATCH_TEXT) yield step();
  }
  yield step();
}

interface Writer {
  readonly sinks: Sinks;
  readonly seen: SeenIds;
  readonly count: Counter;
}

async function writeOutcome(
  unit: RawUnit,
  outcome: UnitOutcome,
  name: string,
  { sinks, seen, count }: Writer,
): Promise<void> {
  const { exam, issues } = outcome;
  if (exam !== undefined && seen.add(exam.id)) {
    count.converted(outcome);
    for (const { file, text } of exam.lines) await sinks.add(file, `${text}\n`);
    for (const found of issues) {
      await sinks.add(
        'issues.ndjson',
        `${JSON.stringify({ exam: exam.id, file: name, ...found })}\n`,
      );
    }
    return;
  }
  const all = exam === undefined ? issues : [...issues, repeatedExam(unit)];
  const entry = quarantineEntry(unit, all, outcome.counts.fields);
  count.quarantined({ ...outcome, issues: all }, entry.reason);
  await sinks.add('quarantine.ndjson', `${JSON.stringify({ file: name, ...entry })}\n`);
}

async function writeIssue(
  found: Issue,
  name: string | undefined,
  { sinks, count }: Writer,
): Promise<void> {
  count.issue(found);
  const line = { ...(name !== undefined && { file: name }), ...found };
  await sinks.add('issues.ndjson', `${JSON.stringify(line)}\n`);
}
