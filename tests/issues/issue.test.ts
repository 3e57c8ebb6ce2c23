import { describe, expect, it } from 'vitest';
import {
  failure,
  hasErrors,
  IssueError,
  issue,
  issuesBelow,
  issueText,
  orThrow,
  success,
} from '../../src/issues/issue.ts';

const missing = issue('missing-side', ['statements', 3, 'side'], {
  reason: 'missing',
  codes: ['right', 'left', 'both'],
});
const warning = issue(
  'unexpected-region',
  [],
  { reason: 'sign', codes: ['nose'] },
  { severity: 'warning' },
);

describe('an issue', () => {
  it('is an error unless told, and holds no property that is not set', () => {
    const made = issue(
      'invalid-value',
      ['a'],
      { reason: 'form', form: undefined },
      { received: undefined },
    );
    expect(made).toEqual({
      code: 'invalid-value',
      severity: 'error',
      message: 'the value does not have the required form',
      path: ['a'],
      facts: { reason: 'form' },
    });
    expect(Object.keys(made)).toEqual(['code', 'severity', 'message', 'path', 'facts']);
  });

  it('cuts what was received', () => {
    const made = issue('invalid-value', [], { reason: 'form' }, { received: 'x'.repeat(500) });
    expect(made.received?.length).toBeLessThanOrEqual(200);
  });

  it('reads as one line', () => {
    expect(issueText(missing)).toBe(
      'error  statements[3].side  the side is missing (expected right, left or both) [missing-side]',
    );
    expect(issueText(warning)).toBe(
      'warning  (root)  this sign is not expected here (expected a region of nose) [unexpected-region]',
    );
  });

  it('moves below a prefix', () => {
    expect(issuesBelow(['exams', 0], [missing])[0]?.path).toEqual([
      'exams',
      0,
      'statements',
      3,
      'side',
    ]);
  });
});

describe('outcomes', () => {
  it('only an error is an error', () => {
    expect(hasErrors([])).toBe(false);
    expect(hasErrors([warning])).toBe(false);
    expect(hasErrors([warning, missing])).toBe(true);
  });

  it('orThrow gives the value, or throws with all issues and names the first error', () => {
    expect(orThrow('do it', success(0, [warning]))).toBe(0);
    let thrown: unknown;
    try {
      orThrow('do it', failure([warning, missing]));
    } catch (error) {
      thrown = error;
    }
    if (!(thrown instanceof IssueError)) throw new Error('no IssueError');
    expect(thrown.issues).toEqual([warning, missing]);
    expect(thrown.message).toBe(`cannot do it: 1 error(s), first: ${issueText(missing)}`);
  });
});
