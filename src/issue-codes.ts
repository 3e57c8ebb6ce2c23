/**
 * Every issue code of the library and what it means. The union {@link IssueCode} is closed: a new
 * code is a new line here, and nowhere else. Sorted by the area that raises it.
 */
export const issueCodes = {
  // input as text or plain data
  'not-json': 'the text is not JSON',
  'duplicate-property': 'a JSON object names the same property twice',
  'too-deep': 'nesting is deeper than the limit',
  'too-large': 'a text, list or file is larger than the limit',
  'unsafe-property': 'a property name that could change prototypes, such as __proto__',
  'invalid-unicode': 'a lone surrogate or a control character that the target format forbids',
  'wrong-type': 'the value has another type than expected',
  'missing-property': 'a required property is missing',
  'unknown-property': 'a property that the structure does not have',
  'invalid-value': 'the value does not have the expected form',
  'empty-value': 'an empty string, list or object where something must stand',

  // exam
  'unknown-code': 'a code that the catalogue or code system does not hold',
  'unknown-region': 'a region that the catalogue does not hold',
  'unexpected-region': 'a sign stated in a region where the tables do not expect it',
  'missing-side': 'a paired region without a side',
  'impossible-side': 'a side that this region can not have',
  'duplicate-key': 'two statements, people or instruments share a key',
  'unresolved-key': 'a key that names nothing in the exam',
  'missing-unit': 'a quantity without a unit',
  'unknown-unit': 'a unit that is no UCUM code of the library',
  'wrong-unit': 'a unit of another dimension than the measure takes',
  'impossible-date': 'a date or time that does not exist',
  'reversed-dates': 'an end before its start, or an event before the one it follows',
  'missing-reason': 'a state that needs a reason, without one',
  'missing-method': 'a region called normal or abnormal without saying how it was examined',
  'impossible-method': 'a method that this region or test does not take',
  'not-exported':
    'a part of the exam that the receiver holds already, or that FHIR has no place for',
  'illegal-step': 'a step in the life of a record that its state does not allow',
  'nothing-changed': 'a step that should change the record and leaves it as it is',
  'draft-exam': 'an exam that is still a draft where a released one is needed',
  contradiction: 'two statements that can not both hold',

  // checks
  'check-measurement': 'figures that do not fit together, or a value that calls for a second look',
  'check-statement': 'a statement that calls for a second look beside others of the exam',
  'coverage-gap': 'the exam is silent on something that its protocol asks for',
  'unknown-protocol': 'the exam names a protocol that the catalogue does not hold',
  'copied-text': 'notes and figures that repeat the prior exam word for word',
  'total-mismatch': 'a total that its items do not add up to',
  'same-exam': 'an exam compared with another version of itself',
  'other-patient': 'two exams that are not shown to be of one patient',
  'withdrawn-exam': 'an exam that was cancelled or entered in error, where a valid one is needed',
  'unknown-rule-set': 'a rule set that the library does not hold',
  'unused-dismissal': 'a dismissal that names no prompt of this run',

  // validation of FHIR
  'unchecked-resource': 'a resource of a type whose schema the library does not hold',
  'unchecked-extension': 'an extension whose definition the library does not hold',
  'unchecked-profile': 'a profile that is claimed and was not given for validation',
  'unchecked-rule': 'a rule that can not be checked here',
  'broken-invariant': 'a published invariant does not hold; its key stands in the rule',
  'duplicate-id': 'two elements, contained resources or entries with the same id',
  'too-many': 'an element that stands more often than it can',
  'wrong-order': 'an XML element that stands before or after its place',
  'invalid-narrative': 'XHTML that a narrative can not have, or that is not well-formed',
  'misplaced-extension': 'an extension where its definition does not let it stand',
  'unresolved-reference': 'a reference to something that must be there and is not',
  'wrong-target': 'a reference to a type of resource that the element does not take',
  'circular-reference': 'observations that are members of themselves',
  'unreachable-entry': 'an entry of a document that nothing in it leads to',
  'wrong-display': 'a display that is not that of the code',

  'licence-policy': 'a SNOMED CT code that the licence policy does not let out of the bundle',

  // codes of the caller
  'withheld-code': 'a code of the caller that the licence policy holds back; it is not exported',
  'wrong-check-digit': 'a SNOMED CT or LOINC code whose check digit is wrong',
  'wrong-system': 'a code under the name of a system that it does not belong to',
  'display-mismatch': 'a display that is not the published name of its code',
  'unchecked-code': 'a code of a system that the library holds in part; it is passed on as given',

  // reading of FHIR
  'several-exams': 'a bundle that holds several exams, and none was asked for',
  'not-in-exam': 'a part of a bundle that the exam read from it does not hold',
  'unread-statement':
    'a part of the exam that can not be read as what it names; it is kept as a note, or in the remainder',

  'not-understood':
    'an element that changes the meaning of what holds it, and that the reader does not know; nothing is concluded from what holds it',
  'side-in-words':
    'a side that the source gives in words, or that has no place of its own in what was read',

  // conversion of legacy exports
  'unmapped-field': 'a field that the mapping does not name; it is kept as text',
  'unmapped-item': 'an item code that the mapping does not list; the record is kept as text',
  'unknown-word': 'a word that the mapping gives no meaning for this field; it is kept as text',
  'blank-field': 'a mapped field is blank and the mapping does not say what blank means',
  'not-a-number': 'text where a number must stand; it is kept as text',
  'decimal-mark': 'a number written with another decimal mark than the mapping states',
  'unit-conflict': 'the unit in the value and the unit field or the mapping disagree',
  'implausible-value': 'a number outside the limits that the mapping expects',
  'side-conflict':
    'two places of the input state different sides, or a side that does not belong there',
  'unknown-side': 'a side word that the mapping does not list',
  'damaged-value': 'a value that a spreadsheet seems to have changed, such as 1-2 into a date',
  'unreadable-date': 'a date or time in none of the forms that the mapping states',
  'missing-zone': 'a time without a zone, and the mapping states none',
  'ambiguous-time': 'a local time that the zone has twice or not at all',
  'conflicting-fields': 'fields that must agree within one exam differ',
  'missing-field': 'a field that the exam can not do without is blank or not there',
  'withdrawn-value': 'the source marks the value as withdrawn; it is kept as text',
  'unattached-attribute': 'an attribute without the one present finding that it describes',
  'not-converted': 'a statement that the exam rules refuse; its fields are kept as text',
  'malformed-record': 'a row or record that can not be split into its fields',
  'unclosed-quote': 'a quoted field without its closing quote',
  'duplicate-record': 'a record that repeats another of the same exam word for word',
  'duplicate-exam': 'the exam id was used by an earlier exam of the same run',
  'undeclared-encoding': 'bytes that are not what the declared or assumed character set allows',
  'lost-character': 'U+FFFD: the input has lost a character before it came here',
  'unreadable-input': 'a file or an entry of an archive that can not be read, or not to its end',
  'ambiguous-mapping': 'two parts of a mapping could both apply',

  // XML
  'not-well-formed': 'a text that is no well-formed XML',
  'forbidden-doctype': 'a document type declaration; it is never read, and no entity is resolved',

  // CDA
  'other-section': 'a section that is no physical exam; it was set aside',
  'not-an-event': 'an entry that is planned, ordered or a goal, and so no finding',
  'broken-reference': 'an entry refers to narrative that is not there',
  'narrative-conflict':
    'an entry and the narrative that it refers to seem to disagree; both are kept',

  // HL7 v2
  'stray-text': 'text that belongs to no message or record',
  'wrong-delimiters': 'a message header that does not declare usable delimiters',
  'broken-line': 'a line break inside a field; the pieces were joined again',
  'unknown-escape': 'an escape sequence or entity that can not be resolved; it stays as it stands',
  'layout-dropped':
    'indents, highlights and other layout that plain text does not have were left out',
  'truncated-value': 'a value that the sender marked as cut off',
  'unknown-value-type': 'a value type that an observation can not have',
  'unsupported-value': 'a value that no exam can hold, such as a file inside the message',
  'unsupported-message':
    'a message or document that is of another kind than those that hold an exam',
  'test-message': 'a message that does not come from production',
  'several-patients': 'one message or document that does not speak of exactly one patient',
  'batch-count': 'a batch with another number of messages than its trailer says',
} as const;

export type IssueCode = keyof typeof issueCodes;
