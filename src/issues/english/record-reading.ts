import type { SentenceTable } from '../facts.ts';

/** Sentences about codes, sides and statements that were written or read. By code and reason. */
export const recordReading = {
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
      'a system of codes cannot identify people, places, visits or devices',
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
    content: 'the signature does not cover what the record says now',
    form: 'the signature does not have a form that can be verified here',
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
      'this changes the meaning of the part that holds it and is not understood, so nothing in that part is read',
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
