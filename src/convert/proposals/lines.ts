import { failure, type Issue, type Outcome, success } from '../../issues/issue.ts';
import { cutIssues } from '../../issues/issue-list.ts';
import { issue } from '../issue.ts';
import type { Proposal } from './proposal.ts';

/**
 * Writes proposals as lines, one a line: a file in which a person sets `confirmed` and decides what is open.
 *
 * @param proposals From `proposeFindings`.
 * @returns The lines, each with its line feed.
 * @example
 * const text = proposalLines(orThrow('propose', proposeFindings(exam)));
 */
export function proposalLines(proposals: readonly Proposal[]): string {
  return proposals.map((one) => `${JSON.stringify(one)}\n`).join('');
}

/**
 * Reads the lines of a file of proposals, confirmed or not.
 *
 * @param text The file, decoded. Blank lines are passed over.
 * @returns The proposals as they are written; `confirmFindings` holds them to their form. It fails where a
 *   line is no JSON object with the id of an exam; issues hold the line.
 * @example
 * const confirmed = orThrow('read the proposals', parseProposals(text));
 */
export function parseProposals(text: string): Outcome<readonly Proposal[]> {
  const issues: Issue[] = [];
  const proposals: Proposal[] = [];
  text.split('\n').forEach((line, at) => {
    if (line.trim() === '') return;
    const value = parsed(line);
    if (isProposal(value)) proposals.push(value);
    else
      issues.push(
        issue('malformed-record', [at], { reason: 'proposal' }, { source: { line: at + 1 } }),
      );
  });
  return issues.length > 0 ? failure(cutIssues(issues)) : success(proposals);
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

/** As far as it says of which exam it is; the rest is checked when it is taken in. */
function isProposal(value: unknown): value is Proposal {
  return (
    typeof value === 'object' && value !== null && 'exam' in value && typeof value.exam === 'string'
  );
}
