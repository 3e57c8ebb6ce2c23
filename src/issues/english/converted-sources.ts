import type { SentenceTable } from '../facts.ts';

/** Sentences about the records and messages of older exports. By code and reason. */
export const convertedSources = {
  'unresolved-reference': {
    result: [
      'a result that the report or panel leads to is missing, so the exam would say less',
      'the resource in one of the files of the run',
    ],
  },
  'duplicate-key': {
    resource: ['the same resource occurs twice', 'the version that holds'],
  },
  'several-exams': {
    reports: [
      'the bundle holds several exams',
      'a bundle for each report; JSON is parted by itself',
    ],
  },
  'malformed-record': {
    'short-line': [
      'the line ends before its last column does, so a value may be cut off',
      'a line of {count} characters, or trimmed in the source of the mapping',
    ],
    'long-line': [
      'the line has text after its last column, so its columns may have shifted',
      'a line of {count} characters',
    ],
    tab: ['the line holds a tab, so no place after it is certain', 'spaces in place of tabs'],
    proposal: [
      'this is not a proposal',
      'a JSON object with exam, note, start, end, text and a statement of the kind finding',
    ],
    'resource-line': [
      'the line is not a resource that can be put together with others',
      'a FHIR resource other than a Bundle, as JSON on one line',
    ],
    line: 'the line does not hold an exam',
    header: ['the header is not a list of texts', 'the names of the columns, each as a text'],
    quarantine: [
      'the line is not an entry of a quarantine file',
      'a JSON object with the text of an exam as raw',
    ],
    json: ['the exam is not JSON', 'JSON as RFC 8259 defines it'],
    'json-name': ['an object names a property twice', 'each property once'],
    'no-record': 'there is no record that can be read',
    columns: [
      'the row cannot be split into the columns of the table',
      'one cell for each heading; a cell that holds a quote is quoted and its quotes are doubled',
    ],
    'no-segment': ['the line is not a segment', 'a segment name'],
    'many-fields': ['there are too many fields', 'at most {maximum}'],
    'obx-ends': ['the OBX ends before OBX-5', 'OBX-5'],
    'empty-repetition': ['OBX-5 has an empty repetition', 'a value in each'],
    'stray-row':
      'the row cannot be read or names no exam; it may belong to the exam before or after it',
  },
  'unclosed-quote': {
    row: [
      'the row has a quote that is not closed',
      'one cell for each heading; a cell that holds a quote is quoted and its quotes are doubled',
    ],
  },
  'too-large': {
    records: ['there are too many records for one call', 'at most {maximum}'],
    resources: [
      'there are too many resources to find what belongs together, so none was put together',
      'at most {maximum} characters, such as the resources of some of the persons',
    ],
    workbook: ['the workbook is larger than the limit', 'at most {maximum} bytes'],
    'sheet-rows': ['the sheet has more rows than a sheet can have', 'at most {maximum}'],
    sheet: ['the sheet has more text than the limit', 'at most {maximum} characters'],
    'shared-strings': [
      'the cells of the workbook share more text than the limit',
      'at most {maximum} characters',
    ],
    line: 'the line is longer than the limit',
    row: [
      'the row is longer than the limit',
      'one cell for each heading; a cell that holds a quote is quoted and its quotes are doubled',
    ],
    rows: [
      'the exam has more rows than can be held',
      'at most {maximum} rows for an exam, sorted by exam',
    ],
    'exam-id': ['the id of the exam is too long', 'at most 200 characters'],
    exams: [
      'the message cannot be split into its exams',
      'at most {count} exams, with {maximum} characters in common',
    ],
    segments: ['the message has too many lines', 'at most {maximum}'],
    fields: ['the segment has too many fields', 'at most {maximum}'],
    message: 'the message is too long',
    json: ['the exam has too much text', 'a smaller object'],
    'exam-element': [
      'the exam has too much text, or too many elements or attributes',
      'a smaller exam element',
    ],
  },
  'unsupported-message': {
    'no-namespace': ['the document declares no namespace; it is read as CDA', '{url}'],
    namespace: ['the document is not in the CDA namespace', '{url}'],
    element: [
      'the element has the name of an exam in another namespace, {url}',
      'the namespace in the source of the mapping',
    ],
    document: ['the document is not a ClinicalDocument', 'ClinicalDocument'],
    type: ['this message type does not hold an exam', 'ORU^R01 or MDM^T02'],
    version: ['this version of HL7 v2 is not read', '2.3 to 2.8'],
    unstructured: [
      'the document holds a file in place of sections, and nothing in it is read',
      'a structuredBody, or a nonXMLBody of text/plain',
    ],
    'unstructured-text': [
      'the document holds one text in place of sections',
      'otherSections: narrative in the source of the mapping, to keep it as a note',
    ],
    'no-exam-section': [
      'the document has no examination section',
      'a section {code}, or sections or otherSections in the source of the mapping',
    ],
  },
  'test-message': {
    processing: ['the message does not come from production', 'P, table 0103'],
  },
  'several-patients': {
    subject: 'the entry is about someone other than the patient, or a specimen; it is kept as text',
    'record-target': [
      'the document does not have exactly one recordTarget',
      'one patient in a document',
    ],
    pid: ['the message does not have exactly one PID segment', 'one patient in a message'],
  },
  'duplicate-exam': {
    id: [
      'an earlier exam of this input has the same id',
      'all records of an exam together, and one exam for each id',
    ],
  },
  'duplicate-record': {
    same: 'the record repeats another one of the same exam word for word; it is used once',
  },
  'unknown-escape': {
    hl7v2: [
      'an escape sequence was left as it is',
      'the sequences F, S, T, R, E, X and the formatting commands',
    ],
    entity: [
      'references to entities that are not predefined were left as they are',
      'amp, lt, gt, quot, apos or a character number',
    ],
  },
  'layout-dropped': {
    layout: 'indents and highlights were left out of the text',
  },
  'stray-text': {
    message: ['there is text outside any message', 'a message that begins with MSH'],
    json: ['there is data outside any exam', 'all data inside the objects of the exams'],
    exam: ['there is text, or an attribute, outside any exam', 'all data inside the exam elements'],
  },
  'wrong-delimiters': {
    msh: [
      'MSH-1 and MSH-2 do not declare usable delimiters',
      'a field separator, then 2 to 5 other characters that are not letters or digits',
    ],
  },
  'broken-line': {
    joined: [
      'a line that is not a segment was joined to the one above',
      'a line break inside a field as \\.br\\ or \\X0D\\',
    ],
  },
  'batch-count': {
    trailer: [
      'the batch does not hold as many messages as its trailer says',
      'BTS-1 to be {count}',
    ],
  },
  'not-well-formed': {
    exam: ['the exam is not well-formed XML', 'well-formed XML'],
  },
  'forbidden-doctype': {
    exam: ['a document type declaration is not read', 'XML without a document type'],
  },
  'too-deep': {
    exam: ['elements are nested too deeply', 'at most {maximum} levels'],
  },
} as const satisfies SentenceTable;
