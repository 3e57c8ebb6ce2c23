import type { CodeableConcept } from 'fhir/r4.js';
import { english, type Texts } from '../terminology/languages/language.ts';
import { hl7Display } from '../terminology/published/hl7.ts';
import { EMPTY_REASON } from './names/systems.ts';

/** Why a section of the document is empty, in code and words. */
export function emptyReason(
  texts: Texts = english.texts,
): CodeableConcept & { readonly text: string } {
  return {
    coding: [
      { system: EMPTY_REASON, code: 'notasked', display: hl7Display(EMPTY_REASON, 'notasked') },
    ],
    text: texts.nothingStated,
  };
}
