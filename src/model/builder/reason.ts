import type { Reason } from '../../kinds/facets/base.ts';
import type { ReasonCode } from '../../terminology/tables/code-types.ts';
import type { Text } from '../primitive.ts';
import type { AddedCode } from './place.ts';

/** A reason code, or the code with the words used. */
export type ReasonGiven =
  | ReasonCode
  | AddedCode
  | { readonly code: ReasonCode | AddedCode; readonly text: Text };

export function reasonOf(given: ReasonGiven): Reason {
  return typeof given === 'string' ? { code: given } : given;
}
