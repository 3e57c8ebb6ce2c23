import type { SentenceTable } from '../facts.ts';

/** Sentences about the file in which a clinic says what it decides. By code and reason. */
export const clinic = {
  'missing-property': {
    'undecided-identity': [
      'nobody has decided which URI the ids of exams stand under',
      'an absolute URI of yours; nothing can be stored without it',
    ],
    'undecided-system': [
      'nobody has decided which code system the own rows belong to',
      'an absolute URI of yours; rows of your own need it',
    ],
    'undecided-snomed': [
      'nobody has decided which SNOMED CT codes may leave',
      'none, free-set, or who holds a licence; until then free-set',
    ],
    'undecided-language': ['nobody has decided on the language', 'en or de; until then en'],
    'undecided-bundle': [
      'nobody has decided on the kind of bundle',
      'collection, transaction or document; until then collection',
    ],
    'undecided-rule-sets': [
      'nobody has decided on the rule sets that prompts come from',
      'a list of rule sets; until then none, and so no prompt',
    ],
  },
  'unknown-property': {
    'of-one-exam': 'this belongs to one exam, and not to all exams of a clinic',
  },
  'unknown-code': {
    row: [
      'the table {table} has no such row',
      'perhaps {near?}, of the table {table}',
      'a code of the table {table}',
    ],
    population: ['there is no reference range for this population', 'perhaps {near?}', '{codes}'],
  },
  contradiction: {
    'protocol-twice': [
      'the catalogue holds another protocol with this code and version',
      'the same protocol, or another version',
    ],
    'limit-twice': ['the threshold {code} sets this side difference too', 'one of the two'],
    'map-without-snomed': [
      'the policy lets no SNOMED CT code leave, so this line has no effect',
      'the policy free-set or licensed, or no such line',
    ],
    'code-twice': [
      'the table {table} also has a row with this code, and both belong to the same code system',
      'a code that occurs only once among the own rows',
    ],
  },
} as const satisfies SentenceTable;
