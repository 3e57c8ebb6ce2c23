/**
 * What the primitive types of FHIR accept, in words.
 * @see https://hl7.org/fhir/R4/datatypes.html#primitive
 */
export const fhirWords: ReadonlyMap<string, string> = new Map([
  ['base64Binary', 'base64 text'],
  ['boolean', 'true or false'],
  ['canonical', 'a canonical URL'],
  ['code', 'a code without spaces at its ends'],
  ['date', 'a date such as 2024, 2024-03 or 2024-03-01'],
  [
    'dateTime',
    'a date such as 2024, 2024-03 or 2024-03-01, or a time with zone such as 2024-03-01T09:30:00+01:00',
  ],
  ['decimal', 'a number'],
  ['id', 'an id of 1 to 64 letters, digits, hyphens and dots'],
  ['instant', 'a time with zone such as 2024-03-01T09:30:00+01:00'],
  ['integer', 'a whole number of 32 bits'],
  ['integer64', 'a whole number as text'],
  ['markdown', 'text'],
  ['oid', 'an OID such as urn:oid:2.16.840.1.113883'],
  ['positiveInt', 'a whole number from 1 to 2147483647'],
  ['string', 'text'],
  ['time', 'a time of day such as 09:30:00'],
  ['unsignedInt', 'a whole number from 0 to 2147483647'],
  ['uri', 'a URI without spaces'],
  ['url', 'a URL without spaces'],
  ['uuid', 'a UUID such as urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7'],
  ['xhtml', 'XHTML as text'],
  ['ResourceList', 'a resource'],
]);
