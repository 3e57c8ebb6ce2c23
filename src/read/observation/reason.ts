import { DATA_ABSENT_REASON } from '../../fhir/names/systems.ts';
import type { Reason } from '../../model/statement.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
import type { Element } from '../bundle/element.ts';
import { type Codes, claimCodings, codingsBeside, ownTable, ownWords } from './concept.ts';

/** Why there is no value, and the code of `state` that stands beside the reason. */
export interface StatedReason {
  readonly reason: Reason;
  readonly state: string | undefined;
}

/** A reason of ours in a dataAbsentReason, with the code of the table `state` where one is named. */
export function absentReasonOf(
  codes: Codes,
  concept: Element | undefined,
  state?: TableName,
): StatedReason | undefined {
  if (concept === undefined) return undefined;
  const code = ownTable(codes, concept, ['reasons'])?.code;
  if (code === undefined) return undefined;
  const beside = state && ownTable(codes, concept, [state])?.code;
  const row = codes.catalogue.reasons.get(code);
  const absent = row?.dataAbsentReason ?? 'not-performed';
  claimCodings(concept, [
    {
      system: DATA_ABSENT_REASON,
      code: absent,
      display: hl7Display(DATA_ABSENT_REASON, absent),
    },
    ...ownCodings(codes, 'reasons', code),
    ...(state && beside !== undefined ? ownCodings(codes, state, beside) : []),
  ]);
  const text = ownWords(concept, row?.display);
  return { reason: { code, ...(text !== undefined && { text }) }, state: beside };
}

/** A reason of ours by itself, as the limit of a partial examination. */
export function reasonOf(codes: Codes, concept: Element | undefined): Reason | undefined {
  if (concept === undefined) return undefined;
  const code = ownTable(codes, concept, ['reasons'])?.code;
  if (code === undefined) return undefined;
  claimCodings(concept, ownCodings(codes, 'reasons', code));
  const text = ownWords(concept, codes.catalogue.reasons.get(code)?.display);
  return { code, ...(text !== undefined && { text }) };
}

function ownCodings(
  codes: Codes,
  table: TableName,
  code: string,
): { system: string; code: string; display?: string | undefined }[] {
  const row = codes.catalogue[table].get(code);
  return [
    { system: codes.lookup.systemOf(table, code), code, display: row?.display },
    ...codingsBeside(codes, { table, code, maps: row?.maps }),
  ];
}
