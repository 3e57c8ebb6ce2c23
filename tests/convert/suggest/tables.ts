import { heldOutInEnglish } from './tables/held-out-in-english.ts';
import { heldOutInOtherLanguages } from './tables/held-out-in-other-languages.ts';
import type { Table } from './tables/table.ts';
import { tunedInEnglish } from './tables/tuned-in-english.ts';
import { tunedInOtherLanguages } from './tables/tuned-in-other-languages.ts';

/**
 * Invented exports of our vineyards and harbours, with what a careful person would make of each column
 * (common practice, no source). Written before the proposals were made from the lexicon. Proposals
 * were tuned on these alone.
 */
export const tunedTables: readonly Table[] = [...tunedInEnglish, ...tunedInOtherLanguages];

/** As `tunedTables`; nobody looked at what is proposed for these before both figures were written down. */
export const heldOutTables: readonly Table[] = [...heldOutInEnglish, ...heldOutInOtherLanguages];
