import { type Issue, type IssueCode, issue } from '../../issue.ts';
import type { Message } from './segments.ts';

/** Message types with an exam in them: observations, and a document whose text is the exam. */
const readable: ReadonlySet<string> = new Set(['ORU^R01', 'MDM^T02']);

/**
 * What the header says against reading this message as the exam of one patient: another message
 * type or version, a test or training message (table 0103), or several patients in one message.
 */
export function headerIssues(message: Message): Issue[] {
  const issues: Issue[] = [];
  const { header, delimiters } = message;
  const part = (field: number, component: number): string =>
    (header.fields[field] ?? '').split(delimiters.component)[component - 1] ?? '';
  const report = (code: IssueCode, field: number, text: string, expected: string): void => {
    const source = { segment: 'MSH', segmentIndex: header.index, field };
    issues.push(issue(code, [], text, { expected, source }));
  };
  if (!readable.has(`${part(9, 1)}^${part(9, 2)}`)) {
    report('unsupported-message', 9, 'a message type that holds no exam', 'ORU^R01 or MDM^T02');
  }
  if (!/^(?:2\.[3-8](?:\.\d)?)?$/.test(part(12, 1))) {
    report('unsupported-message', 12, 'a version of HL7 v2 that is not read', '2.3 to 2.8');
  }
  if (!/^P?$/.test(part(11, 1))) {
    report('test-message', 11, 'a message that is not from production', 'P, table 0103');
  }
  const patients = message.segments.filter((segment) => segment.name === 'PID');
  if (patients.length !== 1) {
    issues.push(
      issue('several-patients', [], 'the message does not have exactly one PID segment', {
        expected: 'one patient in a message',
      }),
    );
  }
  return issues;
}
