import { expect } from 'vitest';
import { hasErrors, issueText } from '../../src/issues/issue.ts';
import { finishExam } from '../../src/model/builder/finish-exam.ts';
import type { Exam } from '../../src/model/exam.ts';
import { oppositesIn } from '../../src/model/rules/opposites.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';

/** Holds an exam to what the builder takes: no error, and no two opposite states of one place. */
export function expectAccepted(exam: Exam): void {
  expect(oppositesIn(exam.statements, builtInCatalogue), exam.id).toEqual([]);
  const { issues } = finishExam({ exam }, exam.status);
  const errors = issues.filter((found) => hasErrors([found]));
  expect(errors.map(issueText), exam.id).toEqual([]);
}
