/** What an input can be expected to be, in words, where no list of codes says it. */
export const englishForms = {
  // JSON values
  text: 'text',
  number: 'a number',
  'whole-number': 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  list: 'a list',
  null: 'null',
  // types of the exam and of settings
  'decimal-text': 'a decimal as text, such as 4.0',
  'date-or-time':
    'a date such as 2024, 2024-03 or 2024-03-01, or a time with zone such as 2024-03-01T09:30:00+01:00',
  'time-with-zone': 'a time with zone such as 2024-03-01T09:30:00+01:00',
  'partial-date': 'a date such as 1962, 1962-03 or 1962-03-20',
  key: 'a key of letters, digits and . _ ~ : / - that begins with a letter or digit',
  code: 'a code of lowercase letters, digits, dots and hyphens',
  'text-not-blank': 'text that is not blank',
  'ucum-unit': 'a UCUM unit code such as mm',
  'absolute-uri': 'an absolute URI such as https://clinic.example/numbers',
  reference: 'a reference such as Patient/123',
  count: 'a whole number from 0 to 100000',
  threshold: 'a decimal as text, such as 4.0, or off',
  'coding-code': 'a code without spaces at its ends',
  'media-type': 'a media type such as image/jpeg',
  // types of FHIR
  base64: 'base64 text',
  'canonical-url': 'a canonical URL',
  date: 'a date such as 2024, 2024-03 or 2024-03-01',
  'fhir-id': 'an id of 1 to 64 letters, digits, hyphens and dots',
  'integer-32': 'a whole number of 32 bits',
  'integer-text': 'a whole number as text',
  oid: 'an OID such as urn:oid:2.16.840.1.113883',
  'positive-integer': 'a whole number from 1 to 2147483647',
  'time-of-day': 'a time of day such as 09:30:00',
  'unsigned-integer': 'a whole number from 0 to 2147483647',
  uri: 'a URI without spaces',
  url: 'a URL without spaces',
  uuid: 'a UUID such as urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7',
  xhtml: 'XHTML as text',
  resource: 'a resource',
  // syntax of JSON
  'json-end': 'the end of the text',
  'json-property': 'a property name in double quotes',
  'json-colon': 'a colon',
  'json-comma-or-brace': 'a comma or }',
  'json-comma-or-bracket': 'a comma or ]',
  'json-closing-quote': 'a closing quote',
  'json-control-escape': 'an escape such as \\n in place of a control character',
  'json-escape': 'an escape that JSON has',
  'json-value': 'a value',
  'json-number': 'a number below 1.8e308',
  // syntax of XML
  'xml-tag': 'a tag with quoted values and its end',
  'xml-closing-tag': 'a closing tag',
  'xml-matching-tag': 'the closing tag of the element that is open',
  'xml-no-cdata-end': 'no ]]> in text',
  'xml-references': 'only references that XML itself has',
  'xml-no-outside-text': 'no text outside the root element',
  'xml-comment-end': 'a comment that ends in -->',
  'xml-declaration': 'the XML declaration only at the start',
  'xml-instruction-end': 'the end of a processing instruction',
  'xml-cdata-end': 'the end of a CDATA section',
  'xml-element-name': 'the name of an element',
  'xml-one-root': 'nothing after the root element',
  'xml-attributes': 'attributes with quoted values, then the end of the tag',
  'xml-declared-prefix': 'a prefix that is declared',
  'xml-attribute-once': 'each attribute once',
} as const;

/** Name of a form of data. */
export type FormWord = keyof typeof englishForms;

/** The form that would have been accepted. */
export type Form =
  | FormWord
  /** One of these codes or values, and of so many more. */
  | { readonly oneOf: readonly string[]; readonly others?: number }
  /** One of these forms. */
  | { readonly anyOf: readonly FormWord[] }
  /** A whole number between these, both included. */
  | { readonly minimum: number; readonly maximum: number }
  /** A structure of this name: `CodeableConcept`. */
  | { readonly type: string };

/** What kind of JSON value something is. */
export const englishKinds = {
  null: 'null',
  list: 'a list',
  text: 'text',
  'whole-number': 'a whole number',
  number: 'a number',
  true: 'true',
  false: 'false',
  object: 'an object',
  undefined: 'undefined',
  bigint: 'a bigint',
  symbol: 'a symbol',
  function: 'a function',
} as const;

/** What a value is, in terms of JSON. */
export type JsonKind = keyof typeof englishKinds;
