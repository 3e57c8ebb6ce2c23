import { claimEqual, innerOf } from '../../read/bundle/element.ts';
import { claimReferences } from '../../read/bundle/reference.ts';
import { ownCode, ownValue } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { claimCommon, type Observed } from '../../read/observation/observation.ts';
import { absentReasonOf } from '../../read/observation/reason.ts';
import { siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import type { SensationComparison } from './statement.ts';

export const comparisonReader: Reader<SensationComparison> = {
  of: ({ table, code }) => table === 'items' && code === 'sensation-comparison',
  read: readComparison,
};

const comparisons = ['equal', 'right-less', 'left-less'] as const;

function readComparison(
  observed: Observed,
  key: string | undefined,
): Read<SensationComparison> | undefined {
  const { reading, entry, element, components } = observed;
  const concept = innerOf(element, 'code');
  const code = ownCode(reading, concept, 'items');
  const [point] = components.codes('test-point', 'testPoints');
  const [modality] = components.codes('modality', 'modalities');
  if (concept === undefined || code === undefined) return undefined;
  if (point === undefined || modality === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const { catalogue } = reading;
  const name = catalogue.items.get('sensation-comparison')?.display ?? '';
  claimEqual(concept, 'text', `${name}: ${catalogue.testPoints.get(point)?.display ?? point}`);
  siteOf(observed);
  // The observations of both sides: they follow from the point.
  claimReferences(reading, element, 'derivedFrom', (reference) =>
    reading.statementOf(reference, entry),
  );
  const codings = filled(codingsOf(code.further));
  const shared = {
    kind: 'sensation-comparison',
    point,
    modality,
    ...(codings && { codings }),
  } as const;
  const answer = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'comparison');
  const result = comparisons.find((known) => known === answer);
  if (result !== undefined) return { ...shared, result };
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'));
  return absent && { ...shared, result: 'not-compared', reason: absent.reason };
}
