import type { SentenceTable } from '../facts.ts';

/** Sentences about data, exams, codes, checks, export and reading. By code and reason. */
export const record = {
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
    text: ['the text is too long', 'at most {maximum} characters'],
    list: ['the list is too long', 'at most {maximum} entries'],
    lines: ['the map has too many rows', 'at most {maximum}'],
    mapping: 'the mapping is too large',
    document: ['the document is too large', 'at most {maximum} characters in a document'],
    xml: ['the XML text is too large', 'at most {maximum} characters'],
    'xml-elements': ['the XML text has too many elements', 'at most {maximum}'],
    circle: [
      '{count} entries refer to one another in a circle and cannot be sent apart',
      'at least {count} entries in a bundle',
    ],
    work: ['the input takes too much work', 'at most {maximum} steps'],
  },
  aborted: {
    signal: 'ended by the signal of the budget: nothing of a result is kept',
  },
  'issues-cut': {
    rest: ['more issues were found than are listed: {count}', 'at most {maximum} issues'],
  },
  'unsafe-property': {
    name: 'a property of this name is not accepted',
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
      'the batch refers to something whose place only an answer of the server can tell',
      'a transaction, master data that is our own, or a delivery that reads the answers',
    ],
    guide: ['the guide asks for {property}, which the exam does not state: {url}', '{property}'],
    identity: [
      'no identifier system of your own is given, and under ours the ids of two clinics would meet',
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
      'there is no form that people read, which would hold what does not leave as data',
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
      'the reference leads to nothing of a kind that may stand here',
      'type and id of one of {codes}, or a URL',
    ],
    form: ['the value does not have the required form', '{form?}'],
    'catalogue-code': [
      'the value does not have the form of a code',
      'lowercase letters, digits, dots and hyphens, at most 100',
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
      'the history has no signing of this version',
      'the version of a step of the action sign',
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
  'missing-side': {
    missing: ['the side is missing', '{codes}'],
  },
  'impossible-side': {
    place: ['this place cannot have that side', '{codes}'],
  },
  'duplicate-key': {
    twice: ['this key is used twice', 'a key that is used once in the list'],
    examiner: ['another examiner of the exam has this key', 'a new key'],
    addition: ['an addition cannot change a statement', 'a new key; or the step amend or correct'],
    'catalogue-code': 'this code is already taken',
    'map-row': 'this source and target are already in the map',
    modality: 'this modality is given twice',
    identifier: 'another observation has this identifier',
  },
  'unresolved-key': {
    'plan-item': 'no item of the plan has this key',
    exam: 'nothing in the exam has this key',
    table: ['the table {table} has no such row', 'a code of the table {table}'],
    'attribute-family': 'no attribute has this family',
    unreached: 'no row leads to this code',
    judgement: 'no statement has this key',
  },
  'unknown-unit': {
    ucum: [
      'this is not a UCUM unit that the library knows',
      'perhaps {near?}',
      'a UCUM unit such as mm',
    ],
    measure: ['this is not a UCUM unit that the library knows', '{units}'],
  },
  'wrong-unit': {
    measure: ['this measure does not take that unit', '{units}'],
    dimension: ['this is not a unit of {kind}', '{units}'],
    'not-a-measure': 'only a measure has a unit',
    'other-kind': ['the measure takes units of another kind', '{units}'],
  },
  'impossible-date': {
    calendar: [
      'this date or time does not exist',
      'a date of the Gregorian calendar, a time up to 23:59:59, a zone up to 14:00',
    ],
  },
  'reversed-dates': {
    birth: 'the exam is dated before the birth date',
    end: 'the exam ends before it starts',
    recorded: 'the record was written before the exam',
    carried: 'the statement is carried over from a time after the exam',
    statement: 'the statement is dated after the record',
    unconfirmed:
      'the statement was not looked at again, but is dated after the time from which it is carried over',
    onset: 'the onset is dated after the record',
    step: 'this step is dated before the one it follows',
    prior: 'the prior exam is later than this one',
    rule: '{ruleId}',
  },
  'missing-reason': {
    state: ['the reason is missing', 'a reason, since there is no result'],
    step: ['the reason is missing', 'why the record was changed'],
    dismissal: 'a prompt can be set aside only with a reason',
  },
  'impossible-method': {
    point: ['this point does not take that modality', '{codes}'],
    region: ['this region does not take that method', '{codes}'],
  },
  'not-exported': {
    guide: ['this is left out, because the guide asks for more about it', 'another target'],
    'withdrawn-letter': 'a withdrawn record has no letter',
    'left-to-tell': 'left out of the letter, for a person to tell',
    detail: ['{count} statements are left out of this copy of the exam', 'detail: everything'],
    signature: 'a signature of the whole record is none of a copy that leaves parts out',
    'report-alone': [
      'the bundle holds the report alone, without the statements of the exam',
      'detail: everything',
    ],
    held: [
      'this is left out, because the receiver is said to hold the record',
      'either a reference or a description',
    ],
    withdrawn: [
      'a receiver that holds what was withdrawn is not told of it',
      'the option previous',
    ],
  },
  'illegal-step': {
    status: [
      'a record with status {status} does not allow the step {step}',
      '{codes?}',
      'no step at all',
    ],
  },
  'nothing-changed': {
    same: [
      'the changes leave the exam as it is',
      'a statement or conclusion that is new or different',
    ],
  },
  'lacking-statement': {
    kept: [
      'the newer version lacks this statement, and it was kept',
      'the statement; or the option lacking, keep or withdraw',
    ],
  },
  'draft-exam': {
    export: [
      'a draft is not exported',
      'preliminary, final or a later status; or the option allowDraft',
    ],
  },
  contradiction: {
    conclusion: ['an addition cannot change the conclusion', 'the step amend or correct'],
    attributes: 'only a finding that is present can have attributes',
    certainty: 'only a finding that is present can have a certainty',
    'reason-with-result': 'a result and a reason why there is none exclude each other',
    'value-or-unusable': [
      'a measurement has either a value or a reason why there is none',
      'value or unusable',
    ],
    comparator: 'there is a comparator, but no value',
    itself: 'a statement cannot be about itself',
    exceptions: 'only an absent sign or a normal region can have exceptions',
    'not-a-member': [
      'an exception must lie within the region of its statement',
      'a region below it',
    ],
    withdrawn: 'this statement was withdrawn, but is still in the exam',
    'stated-and-withdrawn': 'a statement cannot be both stated again and withdrawn',
    'addition-withdraws': ['an addition cannot withdraw a statement', 'the step amend or correct'],
    opposites: [
      '{keys} says the opposite about the same place',
      'one of the two, or another side, place, time or method',
    ],
    'open-members': [
      '{keys} says that a part of it was not examined, only in part, or is not there',
      'that part among the exceptions of this statement',
    ],
    'region-circle': 'the parent regions lead back to this one',
    rule: '{ruleId}',
  },
  'unknown-protocol': {
    coverage: 'the protocol of the exam is not known, so its coverage cannot be determined',
    outstanding: 'the protocol is not known, so what is outstanding cannot be determined',
    other: [
      'coverage was determined against a protocol or version other than the one the exam names',
      '{code} {version}',
    ],
  },
  'coverage-gap': {
    silent: 'the exam is silent on {count} of {total} items that its protocol asks for',
  },
  'same-exam': {
    version: 'the prior exam is this exam itself, in another version',
  },
  'other-patient': {
    other: 'the prior exam belongs to another patient',
    'not-shown': 'nothing in the two records shows that they belong to the same patient',
  },
  'withdrawn-exam': {
    prior: 'the prior exam was cancelled or entered in error',
  },
  'unknown-rule-set': {
    id: 'there is no rule set with this id',
  },
  'unused-dismissal': {
    id: 'no prompt of this run has this id',
  },
  'unchecked-resource': {
    xml: [
      'this is not a resource type that the library holds',
      'a resource type of FHIR {version}, in the namespace http://hl7.org/fhir',
    ],
    schema: 'a resource of type {type} is not checked, because its schema is not held here',
  },
  'too-many': {
    xml: 'this element can occur only once',
  },
  'wrong-order': {
    xml: 'the element is out of order',
  },
  'invalid-narrative': {
    namespace: [
      'the narrative uses a namespace other than that of XHTML',
      'xmlns="{url}" on the div, without a prefix',
    ],
    'not-xhtml': ['the narrative is not well-formed XHTML', 'one div with xmlns="{url}"'],
  },
  'withheld-code': {
    'policy-none': [
      'the policy does not let any SNOMED CT code out; the coding is not exported',
      'no SNOMED CT code',
    ],
    'not-looked-up': [
      'the id is not known to be free; the option freeSet looks it up; the coding is not exported',
      'an id of the Global Patient Set of 2020-09, or a licence',
    ],
    'outside-free-set': [
      'the code is outside the free set; the coding is not exported',
      'an id of the Global Patient Set of 2020-09, or a licence',
    ],
    'map-coding': 'the SNOMED CT policy holds back this coding of the map',
    map: 'the SNOMED CT policy holds back codings of the code map; withheldCodes lists them',
    'sent-before': 'the SNOMED CT policy holds back codes of what was sent before',
  },
  'wrong-check-digit': {
    snomed: [
      'the last digit is not the check digit of the others',
      'an id that passes the Verhoeff check',
    ],
    loinc: [
      'the last digit is not the check digit of the others',
      'a code that passes the mod 10 check',
    ],
  },
  'wrong-system': {
    spelling: ['the system is not written as FHIR requires', '{system}'],
    'other-form': ['the code has the form of another system', '{system}'],
    'not-adopters': [
      'this code system belongs to someone else',
      'a code system of your own; codes of SNOMED CT and LOINC go into maps',
    ],
    'not-of-records': [
      'a system of codes does not name people, places, visits or devices',
      'a system or reference of your own',
    ],
    'own-row': [
      'a row of this library cannot stand for another one',
      'a code system other than that of this library',
    ],
  },
  'display-mismatch': {
    'other-code': 'the display is the published name of another code',
    'other-name': 'the display is not the published name; synonyms cannot be looked up',
  },
  'unchecked-code': {
    'held-in-part': 'the library does not hold this code and passes it on as given',
  },
  'invalid-signature': {
    earlier: 'what was signed here is an earlier version, which the record no longer holds',
    content: 'the signature is not one of what the record says now',
    form: 'the signature does not have the form that is verified here',
  },
  'several-exams': {
    choose: ['the bundle holds several exams', 'the option exam, with the id of one of them'],
  },
  'not-in-exam': {
    part: 'this part of the bundle, {property}, is not part of the exam that was read',
    'other-type': 'resources of this type are not read and stay in the remainder',
    'other-visit': 'a condition that does not belong to the visit of the report is left out',
  },
  'unread-statement': {
    conclusion: 'a conclusion without a level of concern is kept as a note',
    incomplete: 'this observation lacks something that its kind requires, or contradicts itself',
    doubt: '{says}',
    'kept-as-note': 'kept as a note: {says}',
  },
  'several-patients': {
    observation: 'this observation belongs to another patient',
  },
  'unknown-word': {
    relation: ['there is no such relation', '{codes}'],
    'map-relation': ['there is no such relation', '{codes}'],
    action: ['there is no such action', 'add or replace'],
  },
  'missing-field': {
    column: 'the map does not have this column',
  },
  'ambiguous-mapping': {
    circle: [
      'the map goes round in a circle here',
      'a target that does not lead back to its source',
    ],
    'two-equivalents': 'another code of this system is also called equivalent',
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
  'side-conflict': {
    rule: '{ruleId}',
  },
  'check-measurement': {
    rule: '{ruleId}',
  },
  'implausible-figure': {
    limit: ['no human face or neck can have this figure', '{minimum} to {maximum} {unit}'],
    rule: '{ruleId}',
  },
  'check-statement': {
    rule: '{ruleId}',
  },
  'copied-text': {
    rule: '{ruleId}',
  },
  'total-mismatch': {
    rule: '{ruleId}',
  },
  'not-understood': {
    element: '{says}',
    'modifier-element':
      'this element changes the meaning of the resource and is not taken into account',
    modifier: [
      'this changes the meaning of what holds it and is not understood, so that nothing of it is read',
      'a resource without modifier extensions and implicit rules',
    ],
  },
  'side-in-words': {
    'words-alone': ['the side is given only in words and was read from them', 'a coded side'],
    'no-place': 'a side has no place of its own here and is kept in words',
  },
  'licence-policy': {
    none: ['this is a SNOMED CT code, and the policy lets none out', 'no SNOMED CT code'],
    hierarchy: [
      'this names SNOMED CT codes by their hierarchy, which the free set does not hold',
      'an id of the Global Patient Set of 2020-09',
    ],
    'not-an-id': [
      'this is not a plain SNOMED CT id, so it cannot be in the free set',
      'an id of the Global Patient Set of 2020-09',
    ],
    'not-looked-up': [
      'this SNOMED CT id is not known to be free; the option freeSet looks it up',
      'an id of the Global Patient Set of 2020-09',
    ],
    'outside-free-set': [
      'this SNOMED CT id is outside the free set',
      'an id of the Global Patient Set of 2020-09',
    ],
  },
} as const satisfies SentenceTable;
