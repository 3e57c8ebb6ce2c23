import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { GivenRegion } from '../../model/builder/place.ts';
import type { Side, Text } from '../../model/primitive.ts';
import type { Note } from './statement.ts';

/**
 * Adds the examiner's words, verbatim.
 *
 * @param draft The draft so far.
 * @param text The words as they are to be kept.
 * @param details The region and side that they are about, where they are not about the whole exam;
 *   examiner, time.
 * @returns The draft with the statement.
 * @example
 * draft = noted(draft, 'Sunburn from last week', { region: 'nose' });
 */
export function noted(
  draft: ExamDraft,
  text: Text,
  details: Details<Note> & { readonly region?: GivenRegion; readonly side?: Side } = {},
): ExamDraft {
  return state(draft, { kind: 'note', text, ...details });
}
