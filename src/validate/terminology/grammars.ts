import { UCUM } from '../../fhir/names/systems.ts';
import { isLanguageTag } from '../../terminology/languages/language-tag.ts';
import { unitSize } from './ucum.ts';

/**
 * Value sets that are too large to list and whose codes follow a grammar.
 * @see https://hl7.org/fhir/R4/terminologies-systems.html
 */
export const grammars: ReadonlyMap<string, Grammar> = new Map([
  ['http://hl7.org/fhir/ValueSet/mimetypes', mimeTypes()],
  ['http://www.rfc-editor.org/bcp/bcp13.txt', mimeTypes()],
  [
    'http://hl7.org/fhir/ValueSet/all-languages',
    { system: 'urn:ietf:bcp:47', holds: isLanguageTag },
  ],
  [
    'http://hl7.org/fhir/ValueSet/ucum-units',
    { system: UCUM, holds: (code) => unitSize(code) !== undefined },
  ],
]);

/** A grammar of codes, and their system, for elements that hold a coding and not a code alone. */
export interface Grammar {
  readonly system: string;
  readonly holds: (code: string) => boolean;
}

function mimeTypes(): Grammar {
  return { system: 'urn:ietf:bcp:13', holds: isMimeType };
}

/** A type and subtype, and parameters after a semicolon. */
const mimeType = /^[A-Za-z0-9][\w.+!#$&^-]{0,126}\/[A-Za-z0-9][\w.+!#$&^-]{0,126}(?:[ \t]*;.*)?$/;

/** @see https://www.rfc-editor.org/rfc/rfc6838#section-4.2 */
export function isMimeType(code: string): boolean {
  return mimeType.test(code);
}
