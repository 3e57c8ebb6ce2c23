import type { Reference } from 'fhir/r4.js';

/**
 * A reference to what the receiver holds, as a document may carry it: a document must hold all that
 * its composition leads to, so that here the reference only names its target. The report inside the
 * document leads to it.
 * @see https://hl7.org/fhir/R4/documents.html#content
 */
export function outsideReference({ reference = '', identifier, display }: Reference): Reference {
  return { ...(identifier && { identifier }), display: display ?? reference };
}
