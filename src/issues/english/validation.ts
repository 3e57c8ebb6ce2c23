import type { SentenceTable } from '../facts.ts';
import { validationValues } from './validation-values.ts';

/** Sentences about the validation of FHIR. By code and reason. */
export const validation = {
  ...validationValues,
  'duplicate-key': {
    transaction: 'two requests of the transaction change the same resource',
    definition: 'the second definition with this url is used in place of the first',
    concept: 'two concepts of the code system have this code',
    'snapshot-id': 'several elements have the same id or none, and only one of them is checked',
  },
  'unreachable-entry': {
    composition: [
      'the composition does not lead to this entry',
      'entries that references lead to from the Composition',
    ],
  },
  'unresolved-reference': {
    document: [
      'the document does not hold what its composition refers to',
      'an entry of the bundle',
    ],
    message: ['the message does not hold what it is about', 'an entry of the bundle'],
    'enable-when': ['the form has no question with this linkId', 'the linkId of another question'],
    'narrative-link': [
      'a link or image in the narrative leads nowhere',
      'an id in the narrative or in the resource',
    ],
    'full-url': ['no entry of the bundle has this fullUrl', 'the fullUrl of an entry'],
    'other-full-url': [
      'an entry has this type and id, but another fullUrl',
      'the fullUrl of the entry',
    ],
  },
  'invalid-narrative': {
    xhtml: '{says}, at character {count}',
  },
  'impossible-date': {
    calendar: [
      'this date or time does not exist',
      'a date of the Gregorian calendar, a time up to 23:59:59, a zone up to 14:00',
    ],
  },
  'too-large': {
    text: ['the text is too long', 'at most {maximum} characters'],
    answer: ['the answer is longer than the form allows', 'at most {maximum} characters'],
  },
  'empty-value': {
    blank: 'the text consists only of spaces',
    element: 'the element has no value, extension or content',
  },
  'wrong-type': {
    'null-without-extension': [
      'the value is null, and no extension takes its place',
      'a value, or an extension at the same place of the list beside it',
    ],
    'null-beside-null': [
      'the value is null, and so is the one beside it',
      'an extension, or a value at the same place of the list beside it',
    ],
    'extension-value': [
      'the extension does not take a value of this type',
      '{types?}',
      'extensions and no value',
    ],
    'fixed-type': ['the value is not of a type that the element has', '{types}'],
    answer: ['the answer is not of a type that the form asks for', '{types}'],
    'profile-resource': ['the resource has a type other than that of the profile', '{type}'],
    'profile-type': ['the value is not of a type that the profile allows', '{types}'],
  },
  'duplicate-id': {
    element: 'two elements of the resource have this id',
    contained: 'two contained resources have this id',
  },
  'broken-invariant': {
    extension: 'there must be either a value or extensions, but not both',
    published: 'the rule {key} does not hold: {says}',
    expression: 'the published expression is not true',
    profile: 'a rule of the profile does not hold',
  },
  'unchecked-extension': {
    'not-held':
      'the definition of the extension is not held here; its place and content are not checked',
  },
  'misplaced-extension': {
    'not-modifying': 'this extension does not modify and cannot be a modifierExtension',
    modifying: 'this extension modifies and must be a modifierExtension',
    context: ['the extension is not defined for this place', '{types}'],
    ended: 'the extension is for versions of FHIR up to {version}, not for this one',
  },
  'unknown-property': {
    'extension-parts': ['this extension holds a value and no extensions', '{types}'],
    'extension-part': ['the extension has no part with this name', '{codes}'],
    'form-item': ['the form has no item with this linkId at this place', 'a linkId of the form'],
    slice: ['this belongs to none of the slices of the profile', '{codes}'],
  },
  'too-many': {
    'form-item': ['the item occurs twice, and the form does not let it repeat', 'one item'],
    'form-answers': ['the form takes one answer to this question', 'one answer'],
    relation: ['two links have this relation', 'one link of relation {code}'],
    'extension-part': [
      'a part of the extension occurs too often',
      '{minimum} to {maximum?} of {url}',
      '{minimum} or more of {url}',
    ],
    profile: [
      'there are more elements than the profile allows',
      'at most {maximum} of slice {code?}',
      'at most {maximum}',
    ],
  },
  'unchecked-profile': {
    'not-given': 'this profile was not given for validation and is not checked',
    'other-version': 'this version of the profile was not given for validation and is not checked',
  },
  'unchecked-rule': {
    expression: 'the published expression could not be evaluated here',
    form: 'the form that is answered was not given, so the answers are not checked against it',
    bound: 'the bound {property} cannot be checked here',
    slices: 'what tells the slices apart cannot be checked here',
    rule: 'the rule {key} cannot be checked here',
    'target-profile': 'a profile of the target cannot be checked here',
    'value-set': 'the value set {url} cannot be checked here',
    'type-profiles': 'the profile {codes} cannot be checked here',
  },
  'wrong-target': {
    profile: ['the reference leads to something that the profile does not allow', '{types}'],
    type: ['the reference leads to a type of resource that is not allowed here', '{types}'],
    'stated-type': ['this type of resource is not allowed here', '{types?}'],
  },
  'circular-reference': {
    group: 'the group of observations is a member of itself',
    'enable-when': 'the item is enabled by its own answer',
  },
  'unknown-code': {
    'check-digit': [
      'the code does not have the form of the codes of its system, or its check digit is wrong',
      'a code of the system, copied digit for digit',
    ],
    system: [
      'the code system has no such code',
      'a code of {system}, such as {code?}',
      'a code of {system}',
    ],
    type: [
      'FHIR has no type with this name',
      'a type of the version, or the URL of a logical model',
    ],
    'answer-option': ['the form does not offer this answer', 'one of the options of the item'],
    'map-set': [
      'the map leads from one value set to another, and the one on this side lacks this code',
      'a code of {url}',
    ],
    'required-set': ['none of the codes is in the value set that must be used', 'a code of {url}'],
    'extensible-set': [
      'none of the codes is in the value set that should be used where it has a fitting code',
      'a code of {url}',
    ],
  },
  'wrong-display': {
    code: ['the display is not that of the code', '{codes}'],
  },
  'unknown-unit': {
    'ucum-code': ['this is not a UCUM code', 'a case-sensitive code of UCUM, such as mm[Hg]'],
  },
} as const satisfies SentenceTable;
