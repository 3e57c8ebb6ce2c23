import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Key } from '../../model/primitive.ts';
import type { Image } from './statement.ts';

/** A picture that was taken or is referred to. */
export function pictured(
  draft: ExamDraft,
  image: Omit<Image, 'kind' | 'key'> & { readonly key?: Key },
): ExamDraft {
  return state(draft, { kind: 'image', ...image });
}
