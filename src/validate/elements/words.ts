import type { FormWord } from '../../issues/forms.ts';

/**
 * What the primitive types of FHIR accept.
 * @see https://hl7.org/fhir/R4/datatypes.html#primitive
 */
export const fhirForms: ReadonlyMap<string, FormWord> = new Map([
  ['base64Binary', 'base64'],
  ['boolean', 'boolean'],
  ['canonical', 'canonical-url'],
  ['code', 'coding-code'],
  ['date', 'date'],
  ['dateTime', 'date-or-time'],
  ['decimal', 'number'],
  ['id', 'fhir-id'],
  ['instant', 'time-with-zone'],
  ['integer', 'integer-32'],
  ['integer64', 'integer-text'],
  ['markdown', 'text'],
  ['oid', 'oid'],
  ['positiveInt', 'positive-integer'],
  ['string', 'text'],
  ['time', 'time-of-day'],
  ['unsignedInt', 'unsigned-integer'],
  ['uri', 'uri'],
  ['url', 'url'],
  ['uuid', 'uuid'],
  ['xhtml', 'xhtml'],
  ['ResourceList', 'resource'],
]);
