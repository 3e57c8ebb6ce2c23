import { expect } from 'vitest';
import { toBundleOrThrow } from '../../../src/export/to-bundle.ts';
import { issueText } from '../../../src/issues/issue.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';

interface Resource {
  readonly resourceType: string;
  readonly status?: string;
  readonly issued?: string;
  readonly recorded?: string;
}

/** The exam as a bundle is valid, says its state, holds its steps in their order, and comes back equal. */
export function checkExport(exam: Exam): void {
  const bundle = toBundleOrThrow(exam);
  const { valid, issues } = validateBundle(bundle);
  expect(valid, issues.map(issueText).join('\n')).toBe(true);
  expect(fromBundle(bundle).value).toEqual(exam);

  const resources = (bundle.entry ?? []).map(({ resource }) => resource as Resource);
  const ofType = (type: string): Resource[] =>
    resources.filter(({ resourceType }) => resourceType === type);
  expect(ofType('Provenance').map(({ recorded }) => recorded)).toEqual(
    exam.history?.map(({ at }) => at),
  );
  const [report] = ofType('DiagnosticReport');
  expect(report).toMatchObject({ status: exam.status, issued: exam.history?.at(-1)?.at });
  // Rule R27: a final report has only final members.
  if (exam.status !== 'final') return;
  expect(new Set(ofType('Observation').map(({ status }) => status))).toEqual(new Set(['final']));
}
