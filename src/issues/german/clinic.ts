import type { clinic } from '../english/clinic.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanClinic: Translated<typeof clinic> = {
  'missing-property': {
    'undecided-identity': [
      'es ist nicht entschieden, unter welchem URI die Kennungen der Untersuchungen stehen',
      'ein eigener absoluter URI; ohne ihn lässt sich nichts speichern',
    ],
    'undecided-system': [
      'es ist nicht entschieden, zu welchem Codesystem die eigenen Zeilen gehören',
      'ein eigener absoluter URI; eigene Zeilen brauchen ihn',
    ],
    'undecided-snomed': [
      'es ist nicht entschieden, welche SNOMED-CT-Codes hinausgehen dürfen',
      'none, free-set oder wer eine Lizenz hat; bis dahin free-set',
    ],
    'undecided-language': ['die Sprache ist nicht entschieden', 'en oder de; bis dahin en'],
    'undecided-bundle': [
      'die Art des Bundles ist nicht entschieden',
      'collection, transaction oder document; bis dahin collection',
    ],
    'undecided-rule-sets': [
      'es ist nicht entschieden, aus welchen Regelsätzen Hinweise kommen',
      'eine Liste von Regelsätzen; bis dahin keiner und so kein Hinweis',
    ],
  },
  'unknown-property': {
    'of-one-exam': 'das gehört zu einer Untersuchung und nicht zu allen einer Praxis',
  },
  'unknown-code': {
    row: [
      'die Tabelle {table} hat keine solche Zeile',
      'vielleicht {near?}, aus der Tabelle {table}',
      'ein Code der Tabelle {table}',
    ],
    population: ['kein Referenzbereich gilt für diese Population', 'vielleicht {near?}', '{codes}'],
  },
  contradiction: {
    'protocol-twice': [
      'der Katalog hat ein anderes Protokoll mit diesem Code und dieser Version',
      'dasselbe Protokoll oder eine andere Version',
    ],
    'limit-twice': ['die Grenze {code} setzt diesen Seitenunterschied auch', 'eines von beiden'],
    'map-without-snomed': [
      'nach der Regelung geht kein SNOMED-CT-Code hinaus, so dass diese Zeile nichts bewirkt',
      'die Regelung free-set oder licensed, oder keine solche Zeile',
    ],
    'code-twice': [
      'auch die Tabelle {table} hat eine Zeile mit diesem Code, und beide gehören zu einem Codesystem',
      'ein Code, der unter den eigenen Zeilen einmal vorkommt',
    ],
  },
};
