import type { SentenceTable } from '../facts.ts';

/** Sentences about the conversion of older exports. By code and reason. */
export const conversion = {
  'unattached-attribute': {
    finding: 'this does not describe exactly one present finding; it is kept as text',
  },
  'conflicting-fields': {
    names: 'the record has several names of the person, and does not mark one as the legal name',
    measure: 'the exam has different values for one measure; each is kept',
    head: 'the records of one exam differ in a field that must be the same in all of them',
    region: 'the region field and the mapping name different regions',
    'obr-final': ['OBR-25 is final and OBX-11 is not', 'F or C'],
    'several-fields': [
      'it cannot be determined which of several fields belongs to this value; it is kept as text',
      'the value and what belongs to it in one element, row or segment of their own',
    ],
  },
  contradiction: {
    answers: 'the exam has answers here that cannot both hold; all are kept as text',
    narrative: ['a narrative is kept as it stands and never read as a code', 'note'],
    'no-result': [
      'this code is not a result',
      'withdrawn, text, or a state with its reason (table 0085)',
    ],
    'outer-entry':
      'an entry around this one is denied, planned or taken back, so that what it says may not hold',
    'null-entry': [
      'the entry says that there is no information, and has a value; both are kept',
      'a value, or a nullFlavor on the entry',
    ],
    'null-beside-field': 'the source says beside this field that there is none; it is not taken',
    'null-beside-value': [
      'the source says beside this value that there is none; both are kept as text',
      'a value, or a reason why there is none',
    ],
    'own-words': [
      'the code and the words beside it contradict each other; both are kept as text',
      'a code and words that say the same',
    ],
  },
  'unknown-word': {
    cell: 'an operation of the mapping does not fit this text, which stays whole',
    role: [
      'the mapping does not list this word in {property}',
      'a word of {property} in the mapping',
    ],
    concern: 'the conclusion has no level of concern that the mapping lists; it is kept as text',
    'exam-status': 'the mapping does not list this status',
    gender: 'the mapping does not list this word for a gender',
    'item-status': 'the mapping does not list this status; the record is kept as text',
    'many-answers': 'the field has too many answers to be a list of words',
    open: ['the word has no meaning yet', 'a meaning instead of text'],
    'several-readings': ['the word has several readings', '{codes}'],
    number: ['the mapping gives this word no meaning here', 'a number, or a word for no value'],
    'one-of': ['the mapping gives this word no meaning here', 'a word for one of {codes}'],
    finding: ['the mapping gives this word no meaning here', 'a word for a finding'],
    sensation: [
      'the mapping gives this word no meaning here',
      'a word for a result of a sensation test',
    ],
    test: ['the mapping gives this word no meaning here', 'a word for a result of the test {code}'],
    state: [
      'the mapping gives this word no meaning here',
      'a word for normal, abnormal, or a state with its reason',
    ],
    condition: [
      'the mapping gives this word no meaning here',
      'a word for a value of the condition {code}',
    ],
  },
  'missing-field': {
    region: 'the record does not say which region this is about',
    modality: [
      'the record does not say how sensation was tested',
      'a modality in the mapping or a word for one in the modality field',
    ],
    'mapped-column': 'the mapping names a column that the table does not have',
    'exam-id': ['the record does not say which exam it belongs to', '{codes}'],
    'exam-status': 'the record does not state its status',
    subject: 'the record does not say who was examined',
    examiner: 'the record does not say who examined',
    'obx-11': ['OBX-11 does not say whether the value holds', 'OBX-11'],
    'performed-start': [
      'the record does not say when the exam started, in a form that the mapping states',
      '{codes?}',
    ],
    'recorded-missing': [
      'the record does not say when it was written, to the second and with its zone',
      '{codes?}',
    ],
  },
  'wrong-unit': {
    measure: ['this measure does not take that unit', '{units}'],
  },
  'implausible-value': {
    limits: [
      'the number is outside the limits that the mapping expects',
      '{minimum?} to {maximum?} {unit?}',
      '{minimum?} to {maximum?}',
      'at least {minimum?} {unit?}',
      'at least {minimum?}',
      'at most {maximum?} {unit?}',
      'at most {maximum?}',
    ],
  },
  'not-a-number': {
    score: ['the value is not a whole number', 'a score'],
    count: ['the value is not a count', 'a whole number'],
    number: [
      'the value is not a number',
      'a number with the decimal mark {character} and no mark for thousands',
    ],
  },
  'decimal-mark': {
    'two-readings': [
      'the number can be read in two ways',
      'a number with the decimal mark {character} and no mark for thousands',
    ],
  },
  'missing-method': {
    record: [
      'a region cannot be called normal or abnormal without the method',
      'a method in the mapping or in a field of the record',
    ],
    mapping: 'a region cannot be called normal or abnormal without saying how it was examined',
  },
  'unknown-unit': {
    word: ['the mapping does not say which unit this word is', 'a word of units in the mapping'],
    mapping: ['the library does not know this unit', '{units}'],
  },
  'unit-conflict': {
    fields: 'the value and the unit field state different units',
  },
  'missing-unit': {
    nowhere: [
      'neither the record nor the mapping states the unit',
      'a unit in the value, in a field, or in the mapping',
    ],
  },
  'missing-side': {
    sensation: [
      'the side of a sensation test is missing or not possible',
      'right, left, both or midline',
    ],
    target: ['neither the target nor a field states the side', '{codes}'],
  },
  'impossible-side': {
    place: ['this place cannot have that side', '{codes}'],
  },
  'undeclared-encoding': {
    'zero-bytes': [
      'the input holds zero bytes: is it UTF-16 without its mark?',
      'the character set stated in the mapping',
    ],
    'read-as': [
      'the bytes are not in the declared or assumed character set; read as {encoding}',
      'UTF-8, or the character set stated in the mapping',
    ],
    'cannot-decode': [
      'the declared character set cannot be decoded',
      'a character set that this program knows, stated in the mapping',
    ],
  },
  'lost-character': {
    replaced: 'the text has a character that was lost before it came here',
  },
  'invalid-value': {
    'column-end': [
      'the column has no end, two of them, or one before its beginning',
      'length or end, and no more than one of them',
    ],
    delimiter: 'the first line of the table names another delimiter than the mapping',
    'cell-pattern': [
      'the pattern cannot be followed in one way alone',
      'text with place holders for a number, word or text, with something between any two of them',
    ],
    'out-not-empty': ['the folder is not empty', 'an empty folder, or the option to resume'],
    'out-no-run': ['the folder holds no run that was stopped', 'a folder with {code}'],
    'out-other-run': [
      'the run in this folder had other inputs or settings',
      'the same inputs and settings',
    ],
    syntax: ['the mapping is for another syntax', '{code}'],
    zone: [
      'there is no such time zone',
      'an offset such as +01:00, or a name such as Europe/Lisbon',
    ],
    'date-form': [
      'this is not a date form',
      'a form of YYYY, MM, DD, HH, mm, ss, such as DD/MM/YYYY HH:mm',
    ],
    pattern: 'the pattern is not a regular expression',
    'word-meaning': [
      'a word has a meaning that a target of the kind {kind} does not have',
      '{codes}',
    ],
  },
  'malformed-record': {
    'short-line': [
      'the line ends before its last column does, so that a value may be cut',
      'a line of {count} characters, or trimmed in the source of the mapping',
    ],
    'long-line': [
      'the line has text behind its last column, so that its columns may have shifted',
      'a line of {count} characters',
    ],
    tab: ['the line holds a tab, so that no place behind it is certain', 'spaces in place of tabs'],
    proposal: [
      'this is not a proposal',
      'a JSON object with exam, note, start, end, text and a statement of the kind finding',
    ],
    line: 'the line does not hold an exam',
    quarantine: [
      'the line is not an entry of a quarantine file',
      'a JSON object with the text of an exam as raw',
    ],
    json: ['the exam is not JSON', 'JSON as RFC 8259 says'],
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
  'unreadable-input': {
    'encrypted-workbook': [
      'the workbook is protected by a password',
      'a workbook that opens without a password',
    ],
    'binary-workbook': [
      'the workbook is of an older or binary form (.xls, .xlsb)',
      'a workbook saved as .xlsx',
    ],
    'not-workbook': ['the file is not a workbook', 'a workbook saved as .xlsx'],
    'damaged-workbook': [
      'a part of the workbook is damaged, or holds what no workbook can hold',
      'a workbook that is saved anew',
    ],
    'empty-workbook':
      'no cell of the workbook, or of the sheet that the mapping names, holds anything',
    'no-sheet': [
      'the workbook has no sheet of this name or at this place',
      'the name of a sheet, or its place from 1',
    ],
    'several-sheets': [
      '{count} sheets of the workbook hold cells, and the mapping does not say which is meant',
      'sheet in the source of the mapping: the name of a sheet, or its place from 1',
    ],
    input: [
      'the input cannot be read ({error})',
      'a text file, a gzip file, a zip archive, or a folder of these',
    ],
    'not-zip': [
      'the file is not a zip archive',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'zip64-end': [
      'the zip64 end is missing',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'directory-bounds': [
      'the directory is out of bounds',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'directory-damaged': [
      'the directory is damaged',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'zip64-size': [
      'a zip64 size is missing',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'archive-short': [
      'the archive is shorter than it says',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'size-bounds': [
      'a size is out of bounds',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    archive: [
      'the archive cannot be read',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    encrypted: [
      'the entry is encrypted',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    method: [
      'the entry is packed by a method other than store or deflate',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'leads-out': [
      'the name of the entry leads out of the archive',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'entry-long': [
      'the entry is longer than the archive says',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'entry-short': [
      'the entry is shorter than the archive says',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    checksum: [
      'the checksum of the entry is not that of the archive',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'no-header': [
      'the entry has no local header',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'ends-within': [
      'the archive ends within an entry',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
  },
  'too-large': {
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
  'missing-property': {
    proposal: [
      'a confirmed proposal leaves this open',
      'what the sentence says, by whoever confirms it',
    ],
    confirmed: ['a confirmation names no person or moment', 'by and at'],
    'item-kind': [
      'items of a CDA document need a kind, so that negated entries stay apart',
      'observation, negated-observation or another kind of entry',
    ],
    'exam-value': ['nothing states this', '{codes}'],
    region: 'neither the target nor a field states the region',
    modality: 'neither the target nor a field states the modality',
    'exam-element': [
      'the mapping must say which element of the export holds one exam',
      'the path of the element from the root, such as export/exam',
    ],
  },
  'not-an-event': {
    mood: ['the entry is planned, ordered or a goal', 'moodCode EVN'],
  },
  'broken-reference': {
    narrative: 'the entry refers to narrative that is not there',
  },
  'reversed-dates': {
    'passed-over': 'this time is after the record was written; the next in the mapping is taken',
  },
  'narrative-conflict': {
    parts: [
      'the entry and its narrative seem to disagree: {names}',
      'a narrative and an entry that say the same',
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
      'the document has no section of an examination',
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
  'other-section': {
    'set-aside': [
      'a section that is not a physical exam was set aside',
      'template {code} or LOINC {system}',
    ],
  },
  'unmapped-field': {
    kept: 'the mapping does not name this field; it is kept as text',
    'nothing-near-field': [
      'the catalogue has nothing with this name',
      'a target in fields, or the name in text or layout; perhaps {codes?}',
      'a target in fields, or the name in text or layout',
    ],
    'nothing-near-item': [
      'the catalogue has nothing with this name',
      'a target in the map of the items; perhaps {codes?}',
      'a target in the map of the items',
    ],
  },
  'unmapped-item': {
    kept: 'the mapping does not list this item; its record is kept as text',
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
  'workbook-feature': {
    'sheet-read': 'this sheet, number {count} of the workbook, is read',
    'hidden-sheet': 'this sheet, number {count} of the workbook, is read, although it is hidden',
    'further-sheet': 'this sheet, number {count} of the workbook, holds cells and is not read',
    formulas:
      'cells that hold formulas: {count}; the values that the file holds for them are taken, and none is evaluated',
    'merged-cells': [
      'merged areas: {count}; the first cell of each holds its value, and the others are blank',
      'a value in each cell, or fillDown in the source of the mapping',
    ],
    'hidden-rows': 'hidden rows that hold cells: {count}; they are read like the others',
    'hidden-columns': 'hidden columns that hold cells: {count}; they are read like the others',
  },
  'damaged-value': {
    'error-cell': [
      'the cell holds an error, such as #N/A, in place of a value; it is kept as text',
      'the value as it was entered',
    ],
    'no-result': [
      'the cell holds a formula without its value, and none is evaluated; the formula is kept as text',
      'a workbook that was calculated before it was saved',
    ],
    'lost-digits': [
      'the number has more digits than a spreadsheet keeps; it is kept as text',
      'the number as text',
    ],
    'no-date': [
      'the workbook does not have such a day or time, or a part of it was made up; it is kept as text',
      'the day or time in full',
    ],
    'exam-id': 'the id of the exam looks as if a spreadsheet had changed it',
    'patient-number': [
      'the number does not have the form that the mapping states; a spreadsheet may have changed it',
      '{code?}',
    ],
    value: [
      'this looks like a value that a spreadsheet has changed',
      'the value as it was entered',
    ],
  },
  'withdrawn-value': {
    status: 'the source has withdrawn this value',
  },
  'side-conflict': {
    pair: 'the target of a pair has a side of its own',
    within: ['this side word belongs to another part of the body', 'a region within {code}'],
    item: 'the side field and the name of the item disagree',
    value: 'the value and its field name different sides',
    name: 'the name of the field and the mapping name different sides',
    'own-words': [
      'the code and the words beside it name different sides; both are kept as text',
      'a code and words of the same side',
    ],
    'several-sides': [
      'the side fields name sides that do not go together',
      'one side, or left and right',
    ],
  },
  'unknown-side': {
    word: ['the mapping does not list this word for a side', 'a word of sides in the mapping'],
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
  'truncated-value': {
    cut: 'the sender marked this value as cut off',
  },
  'unknown-value-type': {
    'obx-2': ['OBX-2 is not a value type', 'a code of table 0125'],
  },
  'unsupported-value': {
    file: ['there is a file inside the message', 'text or a number'],
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
  'unreadable-date': {
    'birth-date': ['the date of birth cannot be read', '{codes?}'],
    sample: 'no usual date form reads the whole sample',
    'performed-start': [
      'the record does not say when the exam started, in a form that the mapping states',
      '{codes?}',
    ],
    'date-only': ['only the date is taken over; the time is kept as text', '{codes?}'],
    time: ['the time cannot be read; it is kept as text', '{codes?}'],
    recorded: ['the time of recording cannot be read', '{codes?}'],
    'recorded-missing': [
      'the record does not say when it was written, to the second and with its zone',
      '{codes?}',
    ],
    item: ['the time of the item cannot be read; it is kept as text', '{codes?}'],
  },
  'ambiguous-mapping': {
    column: [
      'an earlier column has the same name, or a place in common',
      'one column for each place',
    ],
    'date-form': [
      'an earlier form reads a date in this form differently',
      'forms that cannot be mistaken for each other',
    ],
    'field-use': [
      'the mapping uses this field in {property} and in {code}',
      'one use for each field',
    ],
    word: 'this word matches another one of the table',
    'day-or-month': ['the sample does not tell the day from the month', '{codes} in dates.formats'],
  },
  'unknown-region': {
    within: ['there is no such place', 'a code of the table sections or regions'],
    'not-a-member': [
      'an exception must lie within the region of its target',
      'a region below that of the target',
    ],
    table: [
      'the table regions does not hold this code',
      'perhaps {near?}',
      'a code of the table regions',
    ],
  },
  'unknown-code': {
    meaning: ['no word can mean this', 'perhaps {near?}', 'a meaning that a field can have'],
    table: [
      'the table {table} does not hold this code',
      'perhaps {near?}',
      'a code of the table {table}',
    ],
    'scale-version': ['this scale does not have that version', '{codes}'],
    'part-of-measure': ['this row is not a measure of its own', 'the measure {code}'],
    'measure-of-scale': [
      'this row is not a measure of its own',
      'a scale-score of the scale {code}',
    ],
    reason: 'the table reasons does not hold this code',
  },
  'unresolved-key': {
    proposal:
      'the sentence of a confirmed proposal does not stand at this place of a note of the exam',
    'proposal-exam': 'no exam of this run has the id that a confirmed proposal names',
    'word-table': 'the mapping has no word table with this name',
  },
  'blank-field': {
    unstated: [
      'the field is blank and the mapping does not say what that means',
      'the word "" in the words of the field or in noValue',
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
  'impossible-date': {
    'birth-date': ['the date of birth cannot be read', '{codes?}'],
    'performed-start': [
      'the record does not say when the exam started, in a form that the mapping states',
      '{codes?}',
    ],
    'date-only': ['only the date is taken over; the time is kept as text', '{codes?}'],
    time: ['the time cannot be read; it is kept as text', '{codes?}'],
    recorded: ['the time of recording cannot be read', '{codes?}'],
    'recorded-missing': [
      'the record does not say when it was written, to the second and with its zone',
      '{codes?}',
    ],
    item: ['the time of the item cannot be read; it is kept as text', '{codes?}'],
  },
  'missing-zone': {
    'time-of-day':
      'the time of recording is a date; its time of day is the one that the mapping states',
    'birth-date': ['the date of birth cannot be read', '{codes?}'],
    'performed-start': [
      'the record does not say when the exam started, in a form that the mapping states',
      '{codes?}',
    ],
    'date-only': ['only the date is taken over; the time is kept as text', '{codes?}'],
    time: ['the time cannot be read; it is kept as text', '{codes?}'],
    recorded: ['the time of recording cannot be read', '{codes?}'],
    'recorded-missing': [
      'the record does not say when it was written, to the second and with its zone',
      '{codes?}',
    ],
    item: ['the time of the item cannot be read; it is kept as text', '{codes?}'],
  },
  'ambiguous-time': {
    'birth-date': ['the date of birth cannot be read', '{codes?}'],
    'performed-start': [
      'the record does not say when the exam started, in a form that the mapping states',
      '{codes?}',
    ],
    'date-only': ['only the date is taken over; the time is kept as text', '{codes?}'],
    time: ['the time cannot be read; it is kept as text', '{codes?}'],
    recorded: ['the time of recording cannot be read', '{codes?}'],
    'recorded-missing': [
      'the record does not say when it was written, to the second and with its zone',
      '{codes?}',
    ],
    item: ['the time of the item cannot be read; it is kept as text', '{codes?}'],
  },
} as const satisfies SentenceTable;
