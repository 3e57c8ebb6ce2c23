import { type Issue, issue } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { ExportOptions } from './options.ts';

/** What this exam cannot leave as, and options that do not go together. */
export function unfitting(exam: Exam, options: ExportOptions): Issue[] {
  const issues: Issue[] = [];
  if (exam?.status === 'draft' && options.allowDraft !== true) {
    issues.push(issue('draft-exam', ['status'], { reason: 'export' }));
  }
  if (options.detail === 'report' && options.bundleType === 'document') {
    issues.push(issue('invalid-value', ['detail'], { reason: 'detail-document' }));
  }
  if (options.target !== undefined && (options.fhirVersion ?? 'R4') !== 'R4') {
    issues.push(issue('invalid-value', ['target'], { reason: 'guide-version' }));
  }
  return [...issues, ...formIssues(options), ...signatureIssues(exam, options)];
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
