import { UCUM } from '../../fhir/names/systems.ts';
import { isLanguageTag } from '../../terminology/language-tag.ts';
import { unitSize } from './ucum.ts';

/**
 * Value sets that are too large to list and whose codes follow a grammar.
 * @see https://hl7.org/fhir/R4/terminologies-systems.html
 */
export const grammars: ReadonlyMap<string, (code: string) => boolean> = new Map([
  ['http://hl7.org/fhir/ValueSet/mimetypes', isMimeType],
  ['http://www.rfc-editor.org/bcp/bcp13.txt', isMimeType],
  ['http://hl7.org/fhir/ValueSet/all-languages', isLanguageTag],
  ['http://hl7.org/fhir/ValueSet/ucum-units', (code) => unitSize(code) !== undefined],
]);

/** The systems of those codes, for elements that hold a coding and not a code alone. */
export const grammarSystems: ReadonlyMap<string, string> = new Map([
  ['http://hl7.org/fhir/ValueSet/mimetypes', 'urn:ietf:bcp:13'],
  ['http://www.rfc-editor.org/bcp/bcp13.txt', 'urn:ietf:bcp:13'],
  ['http://hl7.org/fhir/ValueSet/all-languages', 'urn:ietf:bcp:47'],
  ['http://hl7.org/fhir/ValueSet/ucum-units', UCUM],
]);

/** A type and subtype, and parameters after a semicolon. */
const mimeType = /^[A-Za-z0-9][\w.+!#$&^-]{0,126}\/[A-Za-z0-9][\w.+!#$&^-]{0,126}(?:[ \t]*;.*)?$/;

/** @see https://www.rfc-editor.org/rfc/rfc6838#section-4.2 */
export function isMimeType(code: string): boolean {
  return mimeType.test(code);
}
