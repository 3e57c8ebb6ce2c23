import type { SentenceTable } from '../facts.ts';

/** Sentences about what the values of older exports say. By code and reason. */
export const convertedValues = {
  contradiction: {
    rejected: ['a proposal is both confirmed and rejected', 'one of the two'],
    answers: 'the exam has answers here that cannot both hold; all are kept as text',
    narrative: ['a narrative is kept as it stands and never read as a code', 'note'],
    'no-result': [
      'this code is not a result',
      'withdrawn, text, or a state with its reason (table 0085)',
    ],
    'outer-entry':
      'an entry around this one is denied, planned or taken back, so what it says may not hold',
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
  'invalid-value': {
    'column-end': [
      'the column has no end, two of them, or one before its beginning',
      'length or end, and no more than one of them',
    ],
    delimiter: 'the first line of the table names a delimiter other than that of the mapping',
    'cell-pattern': [
      'the pattern cannot be matched in exactly one way',
      'text with placeholders for a number, word or text, and something between any two of them',
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
  'truncated-value': {
    cut: 'the sender marked this value as cut off',
  },
  'unknown-value-type': {
    'obx-2': ['OBX-2 is not a value type', 'a code of table 0125'],
  },
  'unsupported-value': {
    file: ['there is a file inside the message', 'text or a number'],
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
