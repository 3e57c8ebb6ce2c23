import { issue } from '../issue.ts';
import type { Decode, RawUnit } from '../record/record.ts';
import { delimitersOf } from './delimiters.ts';
import { withoutFrame } from './split.ts';

/**
 * Most exams of one message, and longest text that they have in common: each exam carries it, so that
 * without a bound a small input could become a very large output.
 */
const MOST_EXAMS = 1000;
const LONGEST_HEADER = 65_536;

/**
 * The units of a message with an exam in each order: a message ORU^R01 repeats the group of a patient
 * (PID to PV2) and in it the group of an order (ORC, OBR, OBX). Orders that follow each other with one
 * filler order number (OBR-3), or without one, are one exam. Every line of the message is in one unit;
 * those that also belong to a later exam (MSH, and the lines of its patient) go with it as `header`.
 * @see HL7 v2 chapter 7, ORU^R01 message structure: PATIENT_RESULT and ORDER_OBSERVATION repeat
 */
export function cutOrders(unit: RawUnit, decode: Decode): RawUnit[] {
  const lines = unit.raw.match(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g) ?? [];
  const bodies = lines.map((line) => withoutFrame(line.replace(/[\r\n]+$/, '')));
  const head = bodies.findIndex((line) => line.startsWith('MSH'));
  const separator = delimitersOf(bodies[head] ?? '')?.field;
  if (separator === undefined) return [unit];
  const starts = examStarts(bodies, head, separator);
  if (starts.length < 2) return [unit];
  if (starts.length > MOST_EXAMS || starts.some(isTooLong)) return [refused(unit)];
  const line = 'line' in unit.at ? unit.at.line : 1;
  return starts.map(({ from, header }, at): RawUnit => {
    const raw = lines.slice(at === 0 ? 0 : from, starts[at + 1]?.from).join('');
    const own = { ...unit, raw };
    if (at === 0) return own;
    // What was found about the message as a whole has been told with its first exam.
    const { issues: _, ...rest } = own;
    const known = header.map((text) => decode(text, unit.declaredEncoding));
    return { ...rest, at: { line: line + from }, header: known };
  });
}

function isTooLong({ header }: Start): boolean {
  return header.reduce((sum, line) => sum + line.length, 0) > LONGEST_HEADER;
}

function refused(unit: RawUnit): RawUnit {
  const found = issue(
    'too-large',
    [],
    { reason: 'exams', count: MOST_EXAMS, maximum: LONGEST_HEADER },
    {
      source: unit.at,
    },
  );
  return { ...unit, issues: [...(unit.issues ?? []), found] };
}

interface Start {
  /** First line of the exam. */
  readonly from: number;
  /** Lines before it that it needs. */
  readonly header: readonly string[];
}

function examStarts(lines: readonly string[], head: number, separator: string): Start[] {
  const starts: Start[] = [];
  /** Lines of the patient, once its first order has begun. */
  let about: readonly string[] | undefined;
  /** First line of the patient, and of the order that is about to come. */
  let patient: number | undefined;
  let order: number | undefined;
  let filler: string | undefined;
  for (const [at, line] of lines.entries()) {
    const [name, , , number = ''] = line.split(separator, 4);
    if (name === 'PID') {
      patient = at;
      order = at;
      about = undefined;
      filler = undefined;
      continue;
    }
    if (name !== 'ORC' && name !== 'OBR') continue;
    order ??= at;
    about ??= patient === undefined ? [] : lines.slice(patient, at);
    if (name === 'ORC') continue;
    if (beginsExam(number, filler)) {
      const shared = filler === undefined ? [] : about;
      starts.push({ from: order, header: [lines[head] ?? '', ...shared] });
      filler = number;
    }
    order = undefined;
  }
  return starts;
}

/** An order without a number goes on with the exam before it. */
function beginsExam(filler: string, before: string | undefined): boolean {
  return before === undefined || (filler !== '' && filler !== before);
}
