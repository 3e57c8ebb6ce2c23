import { language } from '../tables/language-de.ts';
import type { Language } from './language.ts';

/**
 * German: displays of our own codes and the fixed texts, to be given to `toBundle` as `language`.
 * Wording of this project, from memory; to be read over by clinicians who work in German.
 */
export const german: Language = language;
