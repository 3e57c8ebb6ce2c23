import { describe, expect, it } from 'vitest';
import { hasErrors, IssueError, issue, issuesBelow, issueText, orThrow } from '../src/issue.ts';

const missing = issue('missing-side', ['statements', 3, 'side'], 'the side is missing', {
  expected: 'right, left, both',
});
const warning = issue('unexpected-region', [], 'not expected', { severity: 'warning' });

describe('an issue', () => {
  it('is an error unless told, and holds no property that is not set', () => {
    const made = issue('invalid-value', ['a'], 'wrong', {
      expected: undefined,
      received: undefined,
    });
    expect(made).toEqual({
      code: 'invalid-value',
      severity: 'error',
      message: 'wrong',
      path: ['a'],
    });
    expect(Object.keys(made)).toEqual(['code', 'severity', 'message', 'path']);
  });

  it('cuts what was received', () => {
    const made = issue('invalid-value', [], 'wrong', { received: 'x'.repeat(500) });
    expect(made.received?.length).toBeLessThanOrEqual(200);
  });

  it('reads as one line', () => {
    expect(issueText(missing)).toBe(
      'error  statements[3].side  the side is missing (expected right, left, both) [missing-side]',
    );
    expect(issueText(warning)).toBe('warning  (root)  not expected [unexpected-region]');
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
    expect(orThrow('do it', { value: 0, issues: [warning] })).toBe(0);
    let thrown: unknown;
    try {
      orThrow('do it', { issues: [warning, missing] });
    } catch (error) {
      thrown = error;
    }
    if (!(thrown instanceof IssueError)) throw new Error('no IssueError');
    expect(thrown.issues).toEqual([warning, missing]);
    expect(thrown.message).toBe(`cannot do it: 1 error(s), first: ${issueText(missing)}`);
  });
});
