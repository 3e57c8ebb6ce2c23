import type { StandardSchemaV1 } from '@standard-schema/spec';
import { expect, it } from 'vitest';
import { type Exam, parseExam } from '../../src/index.ts';
import { examSchema } from '../../src/model/exam-schema.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

// The types of the specification's own package decide whether ours is one of its schemas.
const schema: StandardSchemaV1<Exam, Exam> = examSchema();
const { validate } = schema['~standard'];

it('gives the exam itself', () => {
  const exam = sampleExam(1);
  expect(validate(exam)).toEqual({ value: exam });
});

it('gives the errors of parseExam with their paths, and no exam', async () => {
  const { subject: _, ...rest } = sampleExam(1);
  expect(await validate(rest)).toEqual({
    issues: [{ message: 'the required property is missing', path: ['subject'] }],
  });
});

it('leaves warnings out and takes an exam that has them', async () => {
  const exams = Array.from({ length: 40 }, (_, at) => sampleExam(at + 1, { size: 'edge' }));
  const warned = exams.filter((exam) => parseExam(exam).issues.length > 0);
  expect(warned).not.toEqual([]);
  for (const exam of warned) expect(await validate(exam)).toEqual({ value: exam });
});
