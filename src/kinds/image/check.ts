import type { KindCheck } from '../facets/check.ts';
import type { Image } from './statement.ts';

export const imageCheck: KindCheck<Image> = { words: ({ title }) => [title] };
