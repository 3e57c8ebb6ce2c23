import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { run } from './in-process.ts';

/** An exam whose patient has a name of the wrong type, an unknown sign and a side too few. */
function faultyExam(): string {
  const exam = structuredClone(examples.get('broken-off'));
  return JSON.stringify(exam).replace('"erythema"', '"eritema"').replace('"side":"right",', '');
}

describe('issues on standard error', () => {
  it('as text: input, severity, place, message, code', async () => {
    const { code, out, err } = await run(['export'], { stdin: faultyExam() });
    expect({ code, out }).toEqual({ code: 1, out: '' });
    for (const line of err.trimEnd().split('\n')) {
      expect(line).toMatch(/^\(stdin\): error {2}statements\[\d+\]\.\w+ {2}.* \[[a-z-]+\]$/);
    }
    expect(err).toContain('(expected perhaps erythema) [unknown-code]');
  });

  it('as JSON: one issue a line, with the input', async () => {
    const { err } = await run(['export', '--format', 'json'], { stdin: faultyExam() });
    const issues = err
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(issues.length).toBeGreaterThan(1);
    expect(issues[0]).toMatchObject({ input: '(stdin)', severity: 'error' });
    expect(issues.every(({ path }) => path[0] === 'statements')).toBe(true);
  });

  it('as one OperationOutcome', async () => {
    const argv = ['export', '--format', 'operation-outcome'];
    const { err } = await run(argv, { stdin: faultyExam() });
    const outcome = JSON.parse(err);
    expect(outcome.resourceType).toBe('OperationOutcome');
    expect(outcome.issue[0]).toMatchObject({ severity: 'error' });
  });

  it('hold no value of the data, unless asked', async () => {
    const stdin = JSON.stringify(examples.get('broken-off'))
      .replace('"Tavoularé"', '["Tavoularé"]')
      .replace('"2001"', '"20010909"');
    for (const format of ['text', 'json', 'operation-outcome']) {
      const { code, err } = await run(['export', '--format', format], { stdin });
      expect(code).toBe(1);
      expect(err).not.toMatch(/Tavoular|20010909/);
    }
    const { err } = await run(['export', '--include-values'], { stdin });
    expect(err).toContain('got "20010909"');
  });

  it('give lines of the input where it is not JSON', async () => {
    const { code, err } = await run(['validate'], { stdin: '\n\n{\n  "a": 1,\n  b: 2\n}\n' });
    expect(code).toBe(1);
    expect(err).toContain('at line 5, column 3');
    expect(err).toContain('[not-json]');
  });
});
