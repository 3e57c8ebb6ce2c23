import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Key } from '../../model/primitive.ts';
import type { Image } from './statement.ts';

/**
 * Adds a picture that was taken or is referred to.
 *
 * @param draft The draft so far.
 * @param image Where the picture is or its data, its type, place, time and consent; see
 *   {@link Image}.
 * @returns The draft with the statement.
 * @example
 * const withPicture = (image: Omit<Image, 'kind' | 'key'>) => pictured(draft, image);
 */
export function pictured(
  draft: ExamDraft,
  image: Omit<Image, 'kind' | 'key'> & { readonly key?: Key },
): ExamDraft {
  return state(draft, { kind: 'image', ...image });
}
