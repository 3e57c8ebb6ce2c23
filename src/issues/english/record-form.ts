import type { SentenceTable } from '../facts.ts';

/** Sentences about the form of exams and of other data. By code and reason. */
export const recordForm = {
  'not-json': {
    'ends-early': ['the text ends too early', '{form}'],
    syntax: ['the text is not JSON', '{form}'],
  },
  'duplicate-property': {
    twice: 'the object has this property twice',
  },
  'too-deep': {
    levels: ['the data is nested too deeply, or in a circle', 'at most {maximum} levels'],
  },
  'too-large': {
    values: ['there are too many values', 'at most {maximum}'],
    faults: ['there are too many faults to look any further', 'at most {maximum}'],
    text: ['the text is too long', 'at most {maximum} characters'],
    list: ['the list is too long', 'at most {maximum} entries'],
    lines: ['the map has too many rows', 'at most {maximum}'],
    mapping: 'the mapping is too large',
    document: ['the document is too large', 'at most {maximum} characters in a document'],
    xml: ['the XML text is too large', 'at most {maximum} characters'],
    'xml-elements': ['the XML text has too many elements', 'at most {maximum}'],
    circle: [
      '{count} entries refer to one another in a circle and cannot be sent separately',
      'at least {count} entries in a bundle',
    ],
    work: ['the input takes too much work', 'at most {maximum} steps'],
  },
  aborted: {
    signal: 'ended by the signal of the budget: no part of a result is kept',
  },
  'internal-fault': {
    record: 'a fault of this library ended the work on this record: please report it',
  },
  'issues-cut': {
    rest: ['more issues were found than are listed: {count}', 'at most {maximum} issues'],
  },
  'unsafe-property': {
    name: 'a property with this name is not accepted',
  },
  'invalid-unicode': {
    surrogate: [
      'the text holds half a surrogate pair, {character}',
      'Unicode text whose only control characters are tab, line feed and carriage return',
    ],
    character: [
      'the text holds a forbidden character, {character}',
      'Unicode text whose only control characters are tab, line feed and carriage return',
    ],
  },
  'wrong-type': {
    json: ['the value is {found}', '{form?}'],
    'not-a-bundle': ['the resource is not a Bundle', 'Bundle'],
    'not-a-concept-map': ['the resource is not a ConceptMap', 'ConceptMap'],
    'not-a-list': ['the value is not a list', 'a list'],
    'not-an-object': ['the value is not an object', 'an object'],
    'not-text': ['the value is not text', 'text'],
    'not-a-flag': ['the value is neither true nor false', 'true or false'],
    'not-made': ['the value is not what this library makes for it', 'the result of {code}'],
    'attribute-value': [
      'this attribute takes a different value',
      'perhaps {near?}, of {codes?}',
      '{codes?}',
      'a quantity in {unit?}',
      '{form?}',
    ],
    'xml-value': ['the value has the wrong type', '{form}'],
    'beside-value': ['the part beside the value is not an object', 'an object'],
  },
  'missing-property': {
    consent: 'the patient has not agreed to share the record',
    required: ['the required property is missing', '{form?}'],
    text: ['the text is missing', 'text'],
    list: ['the list is missing', 'a list'],
    convention: [
      'there are several readings, and nothing says how the value was derived from them',
      'mean, median, maximum, minimum or last',
    ],
    target: ['there is no target', 'a code; only replace may leave it out'],
    relation: ['how the target relates to the source is not stated', '{codes}'],
    'licence-holder': 'nobody is named as the holder of the licence',
    'batch-place': [
      'the batch refers to something whose place is known only from an answer of the server',
      'a transaction, master data that is our own, or a delivery that reads the answers',
    ],
    guide: ['the guide asks for {property}, which the exam does not state: {url}', '{property}'],
    identity: [
      'no identifier system of your own is given, and under ours the ids of two clinics would collide',
      'an absolute URI of yours, such as https://clinic.example/records',
    ],
    patient: [
      'nothing says whose record it is',
      'a reference to the patient, or an identifier such as the record number',
    ],
    'held-record': [
      'nothing says which record of the receiver is meant',
      'a reference or an identifier',
    ],
    forms: [
      'there is no form for people to read, which would hold what does not leave as data',
      'the option presentedForms, such as htmlForm()',
    ],
    signature: ['the record holds no signature', 'a Provenance with a signature'],
    exam: ['the bundle does not hold the exam', 'a DiagnosticReport or Observation of it'],
    'exam-part': [
      'the bundle does not state the {property} of the exam',
      'a bundle that states it, or the option supplied with {property}',
    ],
  },
  'unknown-property': {
    schema: ['this is not a property of {type}', '{near?}'],
    object: ['this is not a property of the object', '{near?}'],
    table: ['there is no such table', '{near?}'],
    'xml-attribute': 'FHIR does not have this attribute here',
    'xml-element': 'FHIR does not have this element here',
    'xml-instruction': 'FHIR has no processing instructions',
    fhir: 'FHIR does not have this property here',
    column: ['the map has a column with an unknown name', '{codes}'],
  },
  'invalid-value': {
    'reference-type': [
      'the reference does not lead to anything that may stand here',
      'type and id of one of {codes}, or a URL',
    ],
    form: ['the value does not have the required form', '{form?}'],
    'catalogue-code': [
      'the value does not have the form of a code',
      'lowercase letters, digits, dots and hyphens, at most 100',
    ],
    secret: ['the secret is too short', 'at least 32 characters that nobody can guess'],
    'shift-days': [
      'the dates cannot be shifted by this',
      'a whole number of days other than 0, at most 36500',
    ],
    'absolute-uri': [
      'the value is not an absolute URI',
      'an absolute URI such as https://clinic.example/codes',
    ],
    'system-uri': ['the value is not an absolute URI', 'the URI of a code system'],
    'target-code': ['the target is not a code', 'a code without spaces at its ends'],
    'snomed-id': ['the code is not a SNOMED CT id', '6 to 18 digits'],
    'loinc-code': ['the code is not a LOINC code', 'digits, a hyphen and a check digit'],
    score: [
      'this scale does not have that score',
      '{codes?}',
      'a whole number from {minimum?} to {maximum?}',
      'a whole number from {minimum?}',
    ],
    'version-order': ['versions must be numbered 1, 2, 3 in order', '{count}'],
    threshold: ['a threshold must be a decimal', 'a decimal as text, or off'],
    'side-difference': ['a side difference must be a decimal', 'a decimal as text'],
    'language-tag': ['the value is not a language tag', 'a BCP 47 tag such as de or en-GB'],
    'snomed-policy': ['there is no such SNOMED CT policy', 'none, free-set or licensed'],
    'snomed-edition': [
      'the edition is not a version URI of SNOMED CT',
      'http://snomed.info/sct/<module>/version/<yyyymmdd>',
    ],
    'history-bundle': [
      'a bundle of type history holds several states of one record',
      'a bundle that holds each resource once',
    ],
    'previous-entry': 'an entry of the previous bundle does not hold a resource',
    'guide-status': ['the guide takes no record that was entered in error', 'another target'],
    'guide-version': ['the profiles of a guide are those of FHIR R4', 'fhirVersion R4'],
    'detail-document': [
      'a document holds the parts of the exam, and cannot be the report alone',
      'everything or notable',
    ],
    'signed-step': [
      'the history does not say that this version was signed',
      'the version of a step whose action is sign',
    ],
    'filed-document': [
      'a document bundle holds what its composition leads to, and no reference to another document',
      'a collection or transaction',
    ],
    'previous-exam': [
      'what was sent before belongs to another exam',
      'the same exam, or the transaction it was sent in',
    ],
    'text-between': ['there is text between elements', 'values in attributes'],
    'one-resource': ['the element does not hold exactly one resource', 'one resource'],
    'fhir-form': ['the value does not have the form of its type', '{type}'],
  },
  'empty-value': {
    text: 'the text is empty',
    list: 'the list is empty',
    object: 'the object has no properties',
    organization: ['the organization is not named', 'a reference, a name or an identifier'],
    'xml-attribute': 'the attribute is empty',
    'xml-element': 'the element has no content',
    'xml-value': 'the value is empty',
    'xml-list': 'the list is empty',
    'xml-object': 'the object is empty',
    neither: 'there is neither a value nor an extension',
    'xml-text': 'the text is empty',
    map: ['the table has no rows', 'at least one row below a heading with {names}'],
  },
  'unknown-code': {
    schema: ['the value is not one of the permitted codes', '{form?}'],
    kind: ['the value does not name a known kind', '{form?}'],
    table: [
      'the table {table} does not hold this code',
      'perhaps {near?}',
      'a code of the table {table}',
    ],
    protocol: [
      'the protocol names a row that the table {table} does not hold',
      'a code of the table {table}',
    ],
    threshold: 'there is no threshold with this id',
    'condition-value': ['this condition does not have that value', '{codes?}', 'no value'],
    attribute: [
      'this sign does not have that attribute',
      'perhaps {near?}, of the family {code?}',
      'an attribute of the family {code?}',
      'no attributes',
    ],
    'sensation-point': [
      'this is not a test point for sensation',
      'a test point of the group sensation',
    ],
    'other-kind-of-test': [
      'this test belongs to another kind of statement',
      'a test for a statement of the kind {kind}',
    ],
    'test-result': [
      'this test does not have that result',
      'perhaps {near?}, of {codes?}',
      '{codes?}',
    ],
    'scale-version': ['this scale does not have that version', '{codes}'],
    'scale-item': ['this scale does not have that item', '{codes?}', 'no items'],
    'part-of-measure': ['this row is not a measure of its own', 'the measure {code}'],
    'measure-of-scale': [
      'this row is not a measure of its own',
      'a scale-score of the scale {code}',
    ],
    'resource-type': ['FHIR {version} has no resource type with this name', '{near?}'],
    option: ['the option does not have that value', '{codes}'],
    'table-name': 'there is no table with this name',
    'map-table': [
      'there is no table with this name',
      'perhaps {near?}',
      'a table or the URI of a code system',
    ],
    'own-code': [
      'the code system of this library does not hold this code; the coding is not exported',
      'a code of its table',
    ],
  },
  'unknown-region': {
    table: [
      'the table regions does not hold this code',
      'perhaps {near?}',
      'a code of the table regions',
    ],
  },
  'unexpected-region': {
    sign: ['this sign is not expected here', 'a region of {codes}'],
  },
  'too-many': {
    xml: 'this element can occur only once',
  },
  'wrong-order': {
    xml: 'the element is out of order',
  },
  'undeclared-encoding': {
    'xml-declaration': ['the XML declaration names a character set other than UTF-8', 'UTF-8'],
    'not-utf-8': ['the input is not UTF-8 text', 'UTF-8'],
    mapping: ['the mapping is not UTF-8 text', 'UTF-8'],
  },
  'not-well-formed': {
    'ends-early': ['the text ends too early', '{form}'],
    syntax: ['the text is not XML', '{form}'],
  },
  'forbidden-doctype': {
    xml: ['a document type declaration is not accepted', 'XML without a document type'],
  },
} as const satisfies SentenceTable;
