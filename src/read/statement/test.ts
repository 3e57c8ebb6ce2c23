import { interpretation } from '../../fhir/observation-codes.ts';
import type { FunctionTest, Movement } from '../../model/statement.ts';
import { ownCode } from '../concept.ts';
import { claimEqual, innerOf } from '../element.ts';
import { claimCommon, type Observed } from '../observation.ts';
import { absentReasonOf } from '../reason.ts';
import { siteOf } from '../site.ts';
import { codingsOf, filled } from '../values.ts';
import type { Read } from './read.ts';

export function readTest(
  observed: Observed,
  key: string | undefined,
): Read<Movement> | Read<FunctionTest> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'testPoints');
  if (code === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const side = siteOf(observed)?.side;
  const value = ownCode(reading, innerOf(element, 'valueCodeableConcept'), 'testResults');
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'), 'testResults');
  const result = value?.code ?? absent?.state;
  if (result === undefined) return undefined;
  if (value !== undefined) {
    const usual = reading.catalogue.testResults.get(result)?.usual === true;
    claimEqual(element, 'interpretation', [interpretation(usual ? 'N' : 'A')]);
  }
  const codings = filled(codingsOf(code.further));
  const shared = {
    test: code.code,
    ...(side !== undefined && { side }),
    ...(value === undefined && absent && { reason: absent.reason }),
    ...(codings && { codings }),
  };
  if (reading.catalogue.testPoints.get(code.code)?.group === 'function') {
    return { kind: 'function-test', result, ...shared };
  }
  const synkinesis = components.flag('synkinesis');
  return {
    kind: 'movement',
    grade: result,
    ...shared,
    ...(synkinesis !== undefined && { synkinesis }),
  };
}
