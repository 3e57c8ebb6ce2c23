import type { SentenceTable } from '../facts.ts';

/** Sentences about what exams and bundles say. By code and reason. */
export const recordMeaning = {
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
    table: [
      'the table {table} has no such row',
      'perhaps {near?}, of the table {table}',
      'a code of the table {table}',
    ],
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
    signature: 'a signature of the whole record does not cover a copy that leaves parts out',
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
      'the newer version lacks this statement, so it was kept',
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
      '{keys} says that a part of it was not examined, was examined only in part, or is not there',
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
} as const satisfies SentenceTable;
