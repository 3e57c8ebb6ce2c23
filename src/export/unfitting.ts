import { type Issue, issue } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { ExportOptions } from './options.ts';

/** What this exam cannot leave as, and options that do not go together. */
export function unfitting(exam: Exam, options: ExportOptions): Issue[] {
  const issues: Issue[] = [];
  if (exam?.status === 'draft' && options.allowDraft !== true) {
    issues.push(issue('draft-exam', ['status'], { reason: 'export' }));
  }
  return [
    ...issues,
    ...optionClashes(options),
    ...formIssues(options),
    ...signatureIssues(exam, options),
  ];
}

/** Options that do not go together, whatever the exam. */
export function optionClashes({
  detail,
  bundleType,
  target,
  fhirVersion = 'R4',
}: Pick<ExportOptions, 'detail' | 'bundleType' | 'target' | 'fhirVersion'>): Issue[] {
  const issues: Issue[] = [];
  if (detail === 'report' && bundleType === 'document') {
    issues.push(issue('invalid-value', ['detail'], { reason: 'detail-document' }));
  }
  if (target !== undefined && fhirVersion !== 'R4') {
    issues.push(issue('invalid-value', ['target'], { reason: 'guide-version' }));
  }
  return issues;
}

/** The forms that people read, and the document that files them. */
function formIssues(options: ExportOptions): Issue[] {
  const { documentReference = false, presentedForms, detail, bundleType } = options;
  const issues: Issue[] = [];
  if (documentReference && bundleType === 'document') {
    issues.push(issue('invalid-value', ['documentReference'], { reason: 'filed-document' }));
  }
  if (presentedForms === undefined && (documentReference || detail === 'report')) {
    const severity = documentReference ? 'error' : 'warning';
    issues.push(issue('missing-property', ['presentedForms'], { reason: 'forms' }, { severity }));
  }
  return issues;
}

/** A signature is one of a step that signed, and of the whole record. */
function signatureIssues(exam: Exam, { signatures = [], detail }: ExportOptions): Issue[] {
  const issues: Issue[] = signatures.flatMap(({ version }, at) => {
    const step = exam?.history?.find((event) => event.version === version);
    if (step?.action === 'sign') return [];
    return [issue('invalid-value', ['signatures', at, 'version'], { reason: 'signed-step' })];
  });
  if (signatures.length === 0 || detail === undefined || detail === 'everything') return issues;
  const severity = 'warning';
  return [...issues, issue('not-exported', ['signatures'], { reason: 'signature' }, { severity })];
}
