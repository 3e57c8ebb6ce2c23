import type { KindCheck } from '../check.ts';
import type { Note } from './statement.ts';

export const noteCheck: KindCheck<Note> = { words: ({ text }) => [text] };
