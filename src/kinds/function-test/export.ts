import type { ExportContext } from '../../export/context.ts';
import {
  absentReason,
  type Exporter,
  type ObservationParts,
  subjectConcept,
} from '../../export/resources/observation.ts';
import type { Statement } from '../../model/statement.ts';
import type { Reason } from '../facets/base.ts';
import type { FunctionTest } from './statement.ts';

/** A reflex, hearing, swallowing or similar test and its result. */
export const functionTestExport: Exporter<FunctionTest> = {
  profile: 'face-neck-test',
  parts: (context, test) => testParts(context, test, test.result, test.reason),
};

/** A test and its answer. A reason stands only where there is no result, which `parseExam` sees to. */
export function testParts(
  context: ExportContext,
  statement: Statement,
  answer: string,
  reason: Reason | undefined,
): ObservationParts {
  const { coder } = context;
  const concept = coder.concept('testResults', answer);
  return {
    code: subjectConcept(context, statement),
    ...(reason === undefined
      ? { value: { valueCodeableConcept: concept } }
      : { dataAbsentReason: absentReason(context, reason, concept.coding) }),
  };
}
