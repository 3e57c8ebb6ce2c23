import type { ExportContext } from '../../export/context.ts';
import { absentReason, type Exporter, type ObservationParts } from '../../export/observation.ts';
import type { Reason } from '../base.ts';
import type { FunctionTest } from './statement.ts';

/** A reflex, hearing, swallowing or similar test and its result. */
export const functionTestExport: Exporter<FunctionTest> = {
  profile: 'face-neck-test',
  parts: (context, { test, result, reason }) => testParts(context, test, result, reason),
};

/** A test and its answer. A reason stands only where there is no result, which `parseExam` sees to. */
export function testParts(
  context: ExportContext,
  test: string,
  answer: string,
  reason: Reason | undefined,
): ObservationParts {
  const { coder } = context;
  const concept = coder.concept('testResults', answer);
  return {
    code: coder.concept('testPoints', test),
    ...(reason === undefined
      ? { value: { valueCodeableConcept: concept } }
      : { dataAbsentReason: absentReason(context, reason, concept.coding) }),
  };
}
