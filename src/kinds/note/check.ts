import type { KindCheck } from '../facets/check.ts';
import type { Note } from './statement.ts';

export const noteCheck: KindCheck<Note> = { words: ({ text }) => [text] };
