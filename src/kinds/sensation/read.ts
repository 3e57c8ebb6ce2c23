import { innerOf } from '../../read/bundle/element.ts';
import type { Component } from '../../read/observation/components.ts';
import { ownCode } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import {
  claimCommon,
  claimInterpretation,
  type Observed,
} from '../../read/observation/observation.ts';
import { absentReasonOf } from '../../read/observation/reason.ts';
import { siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import { type ModalityResult, modalitySaid, type Sensation } from './statement.ts';

export const sensationReader: Reader<Sensation> = {
  of: ({ table, code }, { testPoints }) =>
    table === 'testPoints' && testPoints.get(code)?.group === 'sensation',
  read: readSensation,
};

function readSensation(observed: Observed, key: string | undefined): Read<Sensation> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'testPoints');
  const side = siteOf(observed)?.side;
  if (code === undefined || (side !== 'right' && side !== 'left' && side !== 'midline')) {
    return undefined;
  }
  claimCommon(observed, key, { category: 'exam' });
  const parts = components.ofTable('modalities');
  const results = filled(parts.flatMap((part) => modalityOf(observed, code.code, part) ?? []));
  if (results === undefined) return undefined;
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
  point: string,
  { code, element }: Component,
): ModalityResult | undefined {
  const value = ownCode(reading, innerOf(element, 'valueCodeableConcept'), 'sensationResults');
  if (value !== undefined) {
    const stated = { modality: code, result: value.code };
    claimInterpretation(element, [modalitySaid(point, stated, reading.catalogue)]);
    return stated;
  }
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'), 'sensationResults');
  if (absent?.state === undefined) return undefined;
  return { modality: code, result: absent.state, reason: absent.reason };
}
