import type { OperationOutcomeIssue } from 'fhir/r4.js';

type IssueType = OperationOutcomeIssue['code'];

/**
 * Every issue code of the library: its type in HL7's required list, and what it means. The union
 * {@link IssueCode} is closed: a new code is a line here and a sentence in each language.
 * @see https://hl7.org/fhir/R4/valueset-issue-type.html
 */
const table = {
  // input as text or plain data
  'not-json': ['structure', 'the text is not JSON'],
  'duplicate-property': ['structure', 'a JSON object names the same property twice'],
  'too-deep': ['too-costly', 'nesting is deeper than the limit'],
  'too-large': ['too-long', 'a text, list or file is larger than the limit'],
  aborted: ['incomplete', 'the call was ended by its signal before it was done'],
  'internal-fault': ['exception', 'a fault of this library on one record, to be reported'],
  'issues-cut': ['too-long', 'more was found than is listed; the issue counts the rest'],
  'unsafe-property': [
    'security',
    'a property name that could change prototypes, such as __proto__',
  ],
  'invalid-unicode': [
    'value',
    'a lone surrogate or a control character that the target format forbids',
  ],
  'wrong-type': ['structure', 'the value does not have the expected type'],
  'missing-property': ['required', 'a required property is missing'],
  'unknown-property': ['structure', 'a property that the structure does not have'],
  'invalid-value': ['value', 'the value does not have the expected form'],
  'empty-value': ['value', 'an empty string, list or object where something must stand'],

  // exam
  'unknown-code': ['code-invalid', 'a code that the catalogue or code system does not hold'],
  'unknown-region': ['code-invalid', 'a region that the catalogue does not hold'],
  'unexpected-region': [
    'business-rule',
    'a sign stated in a region where the tables do not expect it',
  ],
  'missing-side': ['required', 'a paired region without a side'],
  'impossible-side': ['business-rule', 'a side that this region cannot have'],
  'duplicate-key': ['duplicate', 'two statements, people or instruments share a key'],
  'unresolved-key': ['not-found', 'a key that names nothing in the exam'],
  'missing-unit': ['required', 'a quantity without a unit'],
  'unknown-unit': ['code-invalid', 'a unit that is not a UCUM code of the library'],
  'wrong-unit': ['value', 'a unit of a dimension other than that of the measure'],
  'impossible-date': ['value', 'a date or time that does not exist'],
  'reversed-dates': [
    'business-rule',
    'an end before its start, or an event before the one it follows',
  ],
  'missing-reason': ['required', 'a state that needs a reason, without one'],
  'missing-method': [
    'required',
    'a region called normal or abnormal without saying how it was examined',
  ],
  'impossible-method': ['business-rule', 'a method that this region or test does not take'],
  'not-exported': [
    'suppressed',
    'a part of the exam that the receiver holds already, or that FHIR has no place for',
  ],
  'illegal-step': ['business-rule', 'a step in the life of a record that its state does not allow'],
  'nothing-changed': [
    'business-rule',
    'a step that should change the record and leaves it as it is',
  ],
  'lacking-statement': [
    'incomplete',
    'a statement of the exam that a form sent again does not hold',
  ],
  'draft-exam': ['business-rule', 'an exam that is still a draft where a released one is needed'],
  contradiction: ['conflict', 'two statements that cannot both hold'],

  // checks
  'check-measurement': [
    'business-rule',
    'figures that do not fit together, or a value that calls for a second look',
  ],
  'implausible-figure': [
    'business-rule',
    'a figure that its measure cannot have, that is unusual for it, or that another figure rules out',
  ],
  'check-statement': [
    'business-rule',
    'a statement that calls for a second look beside others of the exam',
  ],
  'coverage-gap': ['required', 'the exam is silent on something that its protocol asks for'],
  'unknown-protocol': ['not-found', 'the exam names a protocol that the catalogue does not hold'],
  'copied-text': ['duplicate', 'notes and figures that repeat the prior exam word for word'],
  'total-mismatch': ['value', 'a total that its items do not add up to'],
  'same-exam': ['duplicate', 'an exam compared with another version of itself'],
  'other-patient': ['conflict', 'two exams that are not shown to belong to one patient'],
  'withdrawn-exam': [
    'business-rule',
    'an exam that was cancelled or entered in error, where a valid one is needed',
  ],
  'unknown-rule-set': ['not-found', 'a rule set that the library does not hold'],
  'unused-dismissal': ['not-found', 'a dismissal that names no prompt of this run'],

  // validation of FHIR
  'unchecked-resource': [
    'not-supported',
    'a resource of a type whose schema the library does not hold',
  ],
  'unchecked-extension': ['extension', 'an extension whose definition the library does not hold'],
  'unchecked-profile': [
    'not-supported',
    'a profile that is claimed and was not given for validation',
  ],
  'unchecked-rule': ['not-supported', 'a rule that cannot be checked here'],
  'broken-invariant': [
    'invariant',
    'a published invariant does not hold; its key stands in the rule',
  ],
  'duplicate-id': ['duplicate', 'two elements, contained resources or entries with the same id'],
  'too-many': ['structure', 'an element that occurs more often than it can'],
  'wrong-order': ['structure', 'an XML element that is not in its place'],
  'invalid-narrative': [
    'structure',
    'XHTML that a narrative cannot have, or that is not well-formed',
  ],
  'misplaced-extension': [
    'extension',
    'an extension in a place that its definition does not allow',
  ],
  'unresolved-reference': ['not-found', 'a reference to something that must be there and is not'],
  'wrong-target': ['value', 'a reference to a type of resource that the element does not take'],
  'circular-reference': ['business-rule', 'observations that are members of themselves'],
  'unreachable-entry': ['business-rule', 'an entry of a document that nothing in it leads to'],
  'wrong-display': ['code-invalid', 'a display that is not that of the code'],

  'licence-policy': [
    'business-rule',
    'a SNOMED CT code that the licence policy does not let out of the bundle',
  ],

  // codes of the caller
  'withheld-code': [
    'suppressed',
    'a code of the caller that the licence policy holds back; it is not exported',
  ],
  'wrong-check-digit': ['code-invalid', 'a SNOMED CT or LOINC code whose check digit is wrong'],
  'wrong-system': ['code-invalid', 'a code under the name of a system that it does not belong to'],
  'display-mismatch': ['code-invalid', 'a display that is not the published name of its code'],
  'unchecked-code': [
    'not-supported',
    'a code of a system that the library holds in part; it is passed on as given',
  ],
  'invalid-signature': ['security', 'a signature that does not cover what the record says'],

  // reading of FHIR
  'several-exams': [
    'multiple-matches',
    'a bundle that holds several exams, and none was asked for',
  ],
  'not-in-exam': ['not-supported', 'a part of a bundle that the exam read from it does not hold'],
  'not-understood': [
    'not-supported',
    'an element that changes the meaning of what holds it, and that the reader does not know; nothing is concluded from what holds it',
  ],
  'side-in-words': [
    'informational',
    'a side that the source gives in words, or that has no place of its own in what was read',
  ],
  'unread-statement': [
    'not-supported',
    'a part of the exam that cannot be read as what it names; it is kept as a note, or in the remainder',
  ],

  // conversion of legacy exports
  'unmapped-field': ['not-supported', 'a field that the mapping does not name; it is kept as text'],
  'unmapped-item': [
    'not-supported',
    'an item code that the mapping does not list; the record is kept as text',
  ],
  'unknown-word': [
    'code-invalid',
    'a word that the mapping gives no meaning for this field; it is kept as text',
  ],
  'blank-field': [
    'required',
    'a mapped field is blank and the mapping does not say what blank means',
  ],
  'not-a-number': ['value', 'text where a number must stand; it is kept as text'],
  'decimal-mark': ['value', 'a number written with a decimal mark other than that of the mapping'],
  'unit-conflict': ['conflict', 'the unit in the value and the unit field or the mapping disagree'],
  'implausible-value': ['value', 'a number outside the limits that the mapping expects'],
  'side-conflict': [
    'conflict',
    'two places of the input state different sides, or a side that does not belong there',
  ],
  'unknown-side': ['code-invalid', 'a side word that the mapping does not list'],
  'damaged-value': [
    'value',
    'a value that a spreadsheet seems to have changed, such as 1-2 into a date',
  ],
  'unreadable-date': ['value', 'a date or time in none of the forms that the mapping states'],
  'missing-zone': ['required', 'a time without a zone, and the mapping states none'],
  'ambiguous-time': ['value', 'a local time that the zone has twice or not at all'],
  'conflicting-fields': ['conflict', 'fields that must agree within one exam differ'],
  'missing-field': ['required', 'a field that the exam cannot do without is blank or missing'],
  'withdrawn-value': ['deleted', 'the source marks the value as withdrawn; it is kept as text'],
  'unattached-attribute': [
    'business-rule',
    'an attribute without the one present finding that it describes',
  ],
  'malformed-record': ['structure', 'a row or record that cannot be split into its fields'],
  'unclosed-quote': ['structure', 'a quoted field without its closing quote'],
  'duplicate-record': ['duplicate', 'a record that repeats another of the same exam word for word'],
  'duplicate-exam': ['duplicate', 'the exam id was used by an earlier exam of the same run'],
  'undeclared-encoding': [
    'value',
    'bytes that are not what the declared or assumed character set allows',
  ],
  'lost-character': ['value', 'U+FFFD: the input has lost a character before it came here'],
  'unreadable-input': [
    'processing',
    'a file or an entry of an archive that cannot be read, or not to its end',
  ],
  'workbook-feature': [
    'informational',
    'something that a workbook has and a plain table does not: further sheets, formulas, merged or hidden cells',
  ],
  'ambiguous-mapping': ['multiple-matches', 'two parts of a mapping could both apply'],

  // XML
  'not-well-formed': ['structure', 'a text that is not well-formed XML'],
  'forbidden-doctype': [
    'security',
    'a document type declaration; it is never read, and no entity is resolved',
  ],

  // CDA
  'other-section': ['informational', 'a section that is not a physical exam; it was set aside'],
  'not-an-event': [
    'business-rule',
    'an entry that is planned, ordered or a goal, and so not a finding',
  ],
  'broken-reference': ['not-found', 'an entry refers to narrative that is not there'],
  'narrative-conflict': [
    'conflict',
    'an entry and the narrative that it refers to seem to disagree; both are kept',
  ],

  // HL7 v2
  'stray-text': ['structure', 'text that belongs to no message or record'],
  'wrong-delimiters': ['structure', 'a message header that does not declare usable delimiters'],
  'broken-line': ['structure', 'a line break inside a field; the pieces were joined again'],
  'unknown-escape': [
    'value',
    'an escape sequence or entity that cannot be resolved; it is left as it is',
  ],
  'layout-dropped': [
    'informational',
    'indents, highlights and other layout that plain text does not have were left out',
  ],
  'truncated-value': ['value', 'a value that the sender marked as cut off'],
  'unknown-value-type': ['code-invalid', 'a value type that an observation cannot have'],
  'unsupported-value': [
    'not-supported',
    'a value that no exam can hold, such as a file inside the message',
  ],
  'unsupported-message': [
    'not-supported',
    'a message or document of a kind that does not hold an exam',
  ],
  'test-message': ['business-rule', 'a message that does not come from production'],
  'several-patients': [
    'business-rule',
    'a message or document that is not about exactly one patient',
  ],
  'batch-count': ['structure', 'a batch whose number of messages is not that of its trailer'],
} as const satisfies Readonly<Record<string, readonly [IssueType, string]>>;

/** Code of an issue: stable, for programs. */
export type IssueCode = keyof typeof table;

/** Type of HL7's required list that comes nearest to a code. */
export const issueTypes = /*@__PURE__*/ column(0);

/** What each issue code means. */
export const issueCodes = /*@__PURE__*/ column(1);

function column<At extends 0 | 1>(
  at: At,
): Readonly<Record<IssueCode, (typeof table)[IssueCode][At]>> {
  // Built from the keys of the table.
  return Object.fromEntries(Object.entries(table).map(([code, row]) => [code, row[at]])) as Record<
    IssueCode,
    (typeof table)[IssueCode][At]
  >;
}
