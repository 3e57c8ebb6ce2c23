import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Side, Text } from '../../model/primitive.ts';
import type { Note } from './statement.ts';

/** The examiner's words, verbatim, on a region or on the whole exam. */
export function noted(
  draft: ExamDraft,
  text: Text,
  details: Details<Note> & { readonly region?: string; readonly side?: Side } = {},
): ExamDraft {
  return state(draft, { kind: 'note', text, ...details });
}
