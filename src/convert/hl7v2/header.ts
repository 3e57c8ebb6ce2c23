import type { Issue } from '../../issues/issue.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
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
  const report = <Code extends ConversionCode>(
    code: Code,
    field: number,
    facts: ConversionFacts<Code>,
  ): void => {
    const source = { segment: 'MSH', segmentIndex: header.index, field };
    issues.push(issue(code, [], facts, { source }));
  };
  if (!readable.has(`${part(9, 1)}^${part(9, 2)}`)) {
    report('unsupported-message', 9, { reason: 'type' });
  }
  if (!/^(?:2\.[3-8](?:\.\d)?)?$/.test(part(12, 1))) {
    report('unsupported-message', 12, { reason: 'version' });
  }
  if (!/^P?$/.test(part(11, 1))) {
    report('test-message', 11, { reason: 'processing' });
  }
  const patients = message.segments.filter((segment) => segment.name === 'PID');
  if (patients.length !== 1) {
    issues.push(issue('several-patients', [], { reason: 'pid' }));
  }
  return issues;
}
