import type { SentenceTable } from '../facts.ts';

/** Sentences about values and properties of FHIR. By code and reason. */
export const validationValues = {
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
      'the map has no variable with this name here',
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
      'an item below a question belongs in one of its answers',
      'the items in the answer',
    ],
    'form-disabled': ['the other answers do not enable this item of the form', 'no answer'],
    'form-text': ['the text is not that of the form', 'the text of the item in the form'],
  },
} as const satisfies SentenceTable;
