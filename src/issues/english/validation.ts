import type { SentenceTable } from '../facts.ts';

/** Sentences about the validation of FHIR. By code and reason. */
export const validation = {
  'missing-property': {
    'search-id': ['the result of a search has no id', 'the id that the server stores it under'],
    choice: ['the required property is missing', 'one of {codes}'],
    'full-url': ['the entry has no fullUrl', 'an absolute URL, or urn:uuid: and a UUID'],
    'extension-part': [
      'a part of the extension is missing',
      '{minimum} to {maximum?} of {url}',
      '{minimum} or more of {url}',
    ],
    'contained-id': [
      'the contained resource has no id',
      'an id that references in the resource can name',
    ],
    'bound-code': ['there is no code', 'a code of {url}'],
    supplements: [
      'the supplement does not name the code system that it adds to',
      'its canonical URL',
    ],
    'search-components': ['the composite search parameter has no components', 'component'],
    'form-answer': ['an item that the form requires has no answer', 'an answer to the item'],
    profile: [
      'there are fewer elements than the profile requires',
      'at least {minimum} of slice {code?}',
      'at least {minimum}',
    ],
  },
  'invalid-value': {
    'conditional-reference': [
      'the conditional reference is not a search',
      'a resource type and search parameters such as Patient?identifier=a|b',
    ],
    'full-url': ['a fullUrl must be absolute', 'an absolute URL, or urn:uuid: and a UUID'],
    'spaces-at-ends': 'the text has spaces at its start or end',
    uuid: [
      'there is no UUID after urn:uuid:',
      'lowercase letters and digits as in urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7',
    ],
    oid: ['there is no OID after urn:oid:', 'an OID such as urn:oid:2.16.840.1.113883'],
    canonical: [
      'a canonical URL must be absolute',
      'an absolute URL, or # and the id of a contained resource',
    ],
    base64: ['the text is not base64', 'letters, digits, + and / in fours, with = at the end'],
    'base64-spaces': 'the base64 text has spaces or line breaks',
    'decimal-digits': [
      'the decimal has more digits than systems must keep',
      'at most 18 digits before the point and 17 after it',
    ],
    system: [
      'a system must be an absolute URI',
      'a URI with its scheme, such as https://clinic.example/ids',
    ],
    'uri-identifier': [
      'a value of the system urn:ietf:rfc:3986 must be an absolute URI',
      'a URI with its scheme, such as urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7',
    ],
    'code-space': ['a code cannot contain tabs or line breaks', 'single spaces'],
    'element-id': 'the id of an element cannot contain spaces',
    'extension-url': [
      'the url of an extension must be absolute',
      'the canonical URL of its definition',
    ],
    'extension-version': 'the url of an extension cannot name a version',
    definition: [
      'the definition is not used for validation',
      'a StructureDefinition with snapshot or differential, a ValueSet or a CodeSystem, each with its url',
    ],
    'snapshot-element': 'an element of the snapshot has no parent and is not checked',
    fixed: ['this is not the value that the profile fixes', '{code}'],
    'profile-pattern': ['the value does not match the pattern of the profile', '{code}'],
    'too-small': ['the value is below the minimum of the profile', 'at least {minimum}'],
    'too-great': ['the value is above the maximum of the profile', 'at most {maximum}'],
    'reference-space': ['the reference contains a space', 'a URL without spaces'],
    'relative-reference': [
      'the relative reference has no form that FHIR defines',
      'a resource type and an id such as Patient/1',
    ],
    'coding-system': ['a system must be an absolute URI', '{system?}', 'the URI of a code system'],
    'value-set-as-system': [
      'a value set is not a code system',
      '{system?}',
      'the URI of a code system',
    ],
    'other-uri-of-system': [
      'this is not the URI of this system',
      '{system?}',
      'the URI of a code system',
    ],
    'canonical-url': [
      'the url of a definition must be absolute',
      'an absolute URL, or urn:uuid: and a UUID',
    ],
    fhirpath: ['the expression cannot be read as FHIRPath', 'an expression of FHIRPath'],
    'map-variable': [
      'the map knows no variable of this name here',
      'an input of the group or a variable of a rule around it',
    ],
    'element-path': ['FHIR has no element at this path', 'the path of an element of the type'],
    'no-profile': ['the value fits none of the profiles that it may have', '{codes}'],
    'slice-order': ['the slices are not in the order of the profile', '{codes}'],
  },
  contradiction: {
    pages: ['a bundle of this type has no pages', 'a link of another relation'],
    'search-outcome': [
      'the search mode is outcome, but the resource is not an OperationOutcome',
      'an OperationOutcome',
    ],
    'search-type': ['the match has a type other than the one that was searched for', '{type}'],
    'search-mode': [
      'the result has a type other than the one that was searched for, and no search mode',
      'search.mode',
    ],
    'full-url': [
      'the fullUrl does not end in the type and id of the resource',
      '{type} and the id of the resource at the end',
    ],
    'request-update': [
      'the request updates a resource other than the one it sends',
      'the type and id of the resource',
    ],
    'request-create': ['the request creates a type other than the one it sends', '{type?}'],
    'attachment-size': ['the size is not that of the data', '{count}'],
    'attachment-hash': 'the hash is not the SHA-1 of the data',
    choice: ['{property}[x] is given with two types', 'a value of one type'],
    'profile-type': [
      'the profile is for another type of resource',
      'a profile for the type of the resource, not for {type}',
    ],
    'definition-version': 'the definition is for a version other than FHIR {version}',
    'reference-type': ['the type is not that of the resource referred to', '{type?}'],
    'concept-count': ['the count is not that of the concepts', '{count}'],
    'no-concepts': [
      'a code system without content holds concepts',
      'no concepts, or another content',
    ],
    supplement: ['only a supplement names a code system that it adds to', 'supplement'],
    context: ['only the definition of an extension has a context', 'no context'],
    'extension-url': [
      'the url of the extension is not that of its definition',
      'the url of the definition',
    ],
    'form-order': ['the items are not in the order of the form', 'the order of the form'],
    'form-group': ['a group of the form has items and no answers', 'items in the group'],
    'form-display': ['this item of the form is only shown and has no answer', 'no answer'],
    'form-below-answer': [
      'what is asked below a question belongs to one of its answers',
      'the items in the answer',
    ],
    'form-disabled': ['the other answers do not enable this item of the form', 'no answer'],
    'form-text': ['the text is not that of the form', 'the text of the item in the form'],
  },
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
    extension: 'there must be either a value or extensions, and not both',
    published: 'the rule {key} does not hold: {says}',
    expression: 'the published expression is not true',
    profile: 'a rule of the profile does not hold',
  },
  'unchecked-extension': {
    'not-held':
      'the definition of the extension is not held here; its place and content are not checked',
  },
  'misplaced-extension': {
    'not-modifying': 'this extension does not modify, and cannot be a modifierExtension',
    modifying: 'this extension modifies, and must be a modifierExtension',
    context: ['the extension is not defined for this place', '{types}'],
    ended: 'the extension is for versions of FHIR up to {version}, and not for this one',
  },
  'unknown-property': {
    'extension-parts': ['this extension holds a value and no extensions', '{types}'],
    'extension-part': ['the extension has no part with this name', '{codes}'],
    'form-item': ['the form has no item with this linkId at this place', 'a linkId of the form'],
    slice: ['this belongs to none of the slices of the profile', '{codes}'],
  },
  'too-many': {
    'form-item': ['the item stands there twice, and the form does not repeat it', 'one item'],
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
    form: 'the form that is answered was not given, and the answers are not held to it',
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
    type: ['FHIR has no type of this name', 'a type of the version, or the URL of a logical model'],
    'answer-option': ['the form does not offer this answer', 'one of the options of the item'],
    'map-set': ['the map leads between value sets, and its own lacks this code', 'a code of {url}'],
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
