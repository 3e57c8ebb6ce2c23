import { interpretation } from '../../fhir/observation-codes.ts';
import type { ModalityResult, Sensation, SensationComparison } from '../../model/statement.ts';
import type { Component } from '../components.ts';
import { ownCode, ownValue } from '../concept.ts';
import { claimEqual, innerOf } from '../element.ts';
import { claimCommon, type Observed } from '../observation.ts';
import { absentReasonOf } from '../reason.ts';
import { claimReferences } from '../reference.ts';
import { siteOf } from '../site.ts';
import { codingsOf, filled } from '../values.ts';
import type { Read } from './read.ts';

export function readSensation(
  observed: Observed,
  key: string | undefined,
): Read<Sensation> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'testPoints');
  const side = siteOf(observed)?.side;
  if (code === undefined || (side !== 'right' && side !== 'left' && side !== 'midline')) {
    return undefined;
  }
  claimCommon(observed, key, { category: 'exam' });
  const parts = components.ofTable('modalities');
  const results = filled(parts.flatMap((part) => modalityOf(observed, part) ?? []));
  if (results === undefined) return undefined;
  const rows = results.map(({ result }) => reading.catalogue.sensationResults.get(result));
  const tested = rows.filter((row) => row?.untested !== true);
  if (tested.length > 0) {
    const usual = tested.every((row) => row?.usual === true);
    claimEqual(element, 'interpretation', [interpretation(usual ? 'N' : 'A')]);
  }
  const eyesClosed = components.flag('eyes-closed');
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'sensation',
    point: code.code,
    side,
    results,
    ...(eyesClosed !== undefined && { eyesClosed }),
    ...(codings && { codings }),
  };
}

function modalityOf(
  { reading }: Observed,
  { code, element }: Component,
): ModalityResult | undefined {
  const value = ownCode(reading, innerOf(element, 'valueCodeableConcept'), 'sensationResults');
  if (value !== undefined) {
    const usual = reading.catalogue.sensationResults.get(value.code)?.usual === true;
    claimEqual(element, 'interpretation', [interpretation(usual ? 'N' : 'A')]);
    return { modality: code, result: value.code };
  }
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'), 'sensationResults');
  if (absent?.state === undefined) return undefined;
  return { modality: code, result: absent.state, reason: absent.reason };
}

const comparisons = ['equal', 'right-less', 'left-less'] as const;

export function readComparison(
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
  if (result !== undefined) {
    claimEqual(element, 'interpretation', [interpretation(result === 'equal' ? 'N' : 'A')]);
    return { ...shared, result };
  }
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'));
  return absent && { ...shared, result: 'not-compared', reason: absent.reason };
}
