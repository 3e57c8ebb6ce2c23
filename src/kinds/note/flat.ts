import type { Flat } from '../facets/flat.ts';
import type { Note } from './statement.ts';

export const noteFlat: Flat<Note> = {
  answers: ({ text }) => [{ state: 'kept', note: text }],
};
