import type { Observation } from 'fhir/r4.js';
import type { FunctionTest, Movement } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import { absentReason, flagComponent, observationOf } from '../observation.ts';

/** A movement asked for and its grade, or a reflex, hearing or similar test and its result. */
export function testObservation(
  context: ExportContext,
  statement: Movement | FunctionTest,
): Observation {
  const { coder, catalogue } = context;
  const answer = statement.kind === 'movement' ? statement.grade : statement.result;
  const row = catalogue.testResults.get(answer);
  const region = catalogue.testPoints.get(statement.test)?.region;
  const concept = coder.concept('testResults', answer);
  const untested = row?.untested === true && statement.reason !== undefined;
  return observationOf(context, statement, {
    code: coder.concept('testPoints', statement.test),
    bodySite: region === undefined ? undefined : bodySite(context, region, statement.side),
    ...(untested
      ? {
          dataAbsentReason: absentReason(context, statement.reason, concept.coding),
        }
      : {
          value: { valueCodeableConcept: concept },
          interpretation: row?.usual === true ? ('N' as const) : ('A' as const),
        }),
    components:
      statement.kind === 'movement' && statement.synkinesis !== undefined
        ? [flagComponent(context, 'synkinesis', statement.synkinesis)]
        : [],
  });
}
