import type { Flat } from '../facets/flat.ts';
import type { Image } from './statement.ts';

export const imageFlat: Flat<Image> = {
  answers: ({ contentType }) => [{ state: 'kept', answer: contentType }],
};
