import type { BundleEntry } from 'fhir/r4.js';
import type { AnyBundle } from '../export/to-bundle.ts';
import { type EntryAnswer, entryAnswers, isById, isStored, outcomeCodes } from './answer.ts';
import type { AnswerDeviation, AnswerFault } from './answer-faults.ts';
import type { Answer } from './server.ts';
import { pauseAsked } from './wait.ts';

/**
 * `stored`: it is all there. `refused`: sending it again would not help. `conflict`: something there
 * has another version than the one known; see `heldVersions`. `busy`: the bundle that was under way
 * is not stored, or not whole, and can be sent again. `unknown`: no answer that can be trusted came,
 * so that it may be stored, or be stored later.
 */
export type DeliveryResult = 'stored' | 'refused' | 'conflict' | 'busy' | 'unknown';

/** The verdict on one answer. */
export interface Judged {
  readonly result: DeliveryResult;
  /** Status of the last answer, or of the entry that was not stored. */
  readonly status?: number;
  /** Why the result is `unknown`. */
  readonly fault?: AnswerFault;
  /** Codes of the OperationOutcome of the last answer. */
  readonly codes?: readonly string[];
  /** How long the server asks to wait. */
  readonly waitMilliseconds?: number;
}

/** Answers of the 400s that are not a verdict on the content. */
const passing: ReadonlySet<number> = new Set([401, 403, 404, 409, 423, 425, 429]);

/** A gateway that gave up waiting says nothing of what the server behind it does; 202 is done later. */
const undecided: ReadonlyMap<number, AnswerFault> = new Map([
  [202, 'not-done-yet'],
  [408, 'gave-up'],
  [502, 'gave-up'],
  [504, 'gave-up'],
]);

/** What is not as FHIR has it in an answer, and did no harm. */
export function deviationsIn(
  answer: Answer,
  piece: AnyBundle,
  answers: readonly EntryAnswer[] | undefined,
): readonly AnswerDeviation[] {
  if (answer.status === 'none' || answers === undefined) return [];
  const [type = ''] = (answer.header('content-type') ?? '').split(';');
  const entries = (piece.entry ?? []) as BundleEntry[]; // one structure for all versions
  const moved = entries.some(({ request }, at) => {
    const { place } = answers[at] ?? {};
    return isById(request) && place !== undefined && place !== request?.url;
  });
  return [
    ...(type.trim().toLowerCase() === 'application/fhir+json'
      ? []
      : ['wrong-content-type' as const]),
    ...(moved ? ['changed-ids' as const] : []),
  ];
}

/** What an answer says of the bundle that was sent. */
export function judge(
  answer: Answer,
  piece: AnyBundle,
  places: Readonly<Record<string, string>>,
  now: number,
): Judged & { readonly answers?: readonly EntryAnswer[] } {
  if (answer.status === 'none') return { result: 'unknown', fault: answer.fault };
  const { status, text, header } = answer;
  const open = undecided.get(status);
  if (open !== undefined) return { result: 'unknown', status, fault: open };
  if (status >= 200 && status < 300) {
    const read = entryAnswers(text, piece, places);
    if ('fault' in read) return { result: 'unknown', status, fault: read.fault };
    return { ...judgeAll(read.answers), answers: read.answers };
  }
  const wait = pauseAsked(header, now);
  return {
    result: resultOf(status),
    status,
    codes: outcomeCodes(text),
    ...(wait !== undefined && { waitMilliseconds: wait }),
  };
}

/** The worst that an entry says stands for all: one that conflicts, is refused, or is not done. */
function judgeAll(answers: readonly EntryAnswer[]): Judged {
  const failed = answers.flatMap(({ status = 0 }) => (isStored(status) ? [] : [status]));
  for (const result of ['conflict', 'refused', 'busy'] as const) {
    const status = failed.find((one) => resultOf(one) === result);
    if (status !== undefined) return { result, ...(status > 0 && { status }) };
  }
  return { result: 'stored' };
}

function resultOf(status: number): Exclude<DeliveryResult, 'stored' | 'unknown'> {
  if (status === 412) return 'conflict';
  return status >= 300 && status < 500 && !passing.has(status) ? 'refused' : 'busy';
}
