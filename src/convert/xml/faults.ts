import { type Issue, type IssueCode, issue } from '../../issue.ts';
import { xmlLimits } from './limits.ts';
import type { LinePlace } from './place.ts';

const faults: ReadonlyMap<IssueCode, readonly [message: string, expected: string]> = new Map<
  IssueCode,
  readonly [string, string]
>([
  ['not-well-formed', ['the exam is no well-formed XML', 'well-formed XML']],
  ['forbidden-doctype', ['a document type is not read', 'XML without a document type']],
  ['too-deep', ['elements are nested too deeply', `at most ${xmlLimits.depth} levels`]],
  ['too-large', ['the exam has too much text, elements or attributes', 'a smaller exam element']],
  ['stray-text', ['text or attributes outside any exam', 'all data inside the exam elements']],
]);

/** Why a unit can not be read, at its place. */
export function faultIssue(code: IssueCode, at: LinePlace): Issue {
  const [message, expected] = faults.get(code) ?? ['the text can not be read', 'XML'];
  return issue(code, [], message, { expected, source: at });
}
