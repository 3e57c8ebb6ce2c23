import type { recordReading } from '../english/record-reading.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanRecordReading: Translated<typeof recordReading> = {
  'wrong-check-digit': {
    snomed: [
      'die letzte Ziffer ist nicht die Prüfziffer der übrigen',
      'eine Kennung, die die Verhoeff-Prüfung besteht',
    ],
    loinc: [
      'die letzte Ziffer ist nicht die Prüfziffer der übrigen',
      'ein Code, der die Modulo-10-Prüfung besteht',
    ],
  },
  'wrong-system': {
    spelling: ['das System ist nicht so geschrieben, wie FHIR es verlangt', '{system}'],
    'other-form': ['der Code hat die Form eines anderen Systems', '{system}'],
    'not-adopters': [
      'dieses Codesystem gehört anderen',
      'ein eigenes Codesystem; Codes von SNOMED CT und LOINC gehören in Zuordnungen',
    ],
    'not-of-records': [
      'ein Codesystem benennt keine Menschen, Orte, Besuche oder Geräte',
      'ein eigenes System oder ein eigener Verweis',
    ],
    'own-row': [
      'eine Zeile dieser Bibliothek kann nicht für eine andere stehen',
      'ein anderes Codesystem als das dieser Bibliothek',
    ],
  },
  'display-mismatch': {
    'other-code': 'die Bezeichnung ist der veröffentlichte Name eines anderen Codes',
    'other-name':
      'die Bezeichnung ist nicht der veröffentlichte Name; Synonyme lassen sich nicht nachschlagen',
  },
  'unchecked-code': {
    'held-in-part': 'die Bibliothek hält diesen Code nicht und gibt ihn weiter, wie er ist',
  },
  'invalid-signature': {
    earlier: 'hier wurde eine frühere Fassung signiert, die die Aufzeichnung nicht mehr enthält',
    content: 'die Signatur gehört nicht zu dem, was die Aufzeichnung jetzt sagt',
    form: 'die Signatur hat nicht die Form, die hier geprüft wird',
  },
  'several-exams': {
    choose: [
      'das Bundle enthält mehrere Untersuchungen',
      'die Option exam mit der Kennung einer von ihnen',
    ],
  },
  'not-in-exam': {
    part: 'dieser Teil des Bundles, {property}, gehört nicht zur gelesenen Untersuchung',
    'other-type': 'Ressourcen dieses Typs werden nicht gelesen und bleiben im Rest',
    'other-visit': 'eine Condition, die nicht zum Besuch des Berichts gehört, bleibt weg',
  },
  'unread-statement': {
    conclusion: 'eine Beurteilung ohne Grad der Besorgnis bleibt als Notiz erhalten',
    incomplete: 'dieser Observation fehlt etwas, das ihre Art verlangt, oder sie widerspricht sich',
    doubt: 'nicht gelesen: {says}',
    'kept-as-note': 'bleibt als Notiz erhalten: {says}',
  },
  'several-patients': {
    observation: 'diese Observation betrifft eine andere Person',
  },
  'unknown-word': {
    relation: ['diese Beziehung gibt es nicht', '{codes}'],
    'map-relation': ['diese Beziehung gibt es nicht', '{codes}'],
    action: ['diese Aktion gibt es nicht', 'add oder replace'],
  },
  'missing-field': {
    column: 'die Zuordnung hat diese Spalte nicht',
  },
  'ambiguous-mapping': {
    circle: [
      'die Zuordnung führt hier im Kreis',
      'ein Ziel, das nicht zu seiner Quelle zurückführt',
    ],
    'two-equivalents': 'ein weiterer Code dieses Systems wird gleichwertig genannt',
  },
  'side-conflict': {
    rule: '{ruleId}',
  },
  'check-measurement': {
    rule: '{ruleId}',
  },
  'implausible-figure': {
    limit: [
      'kein menschliches Gesicht und kein Hals kann diesen Wert haben',
      '{minimum} bis {maximum} {unit}',
    ],
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
    element: 'nicht verstanden: {says}',
    'modifier-element':
      'dieses Element ändert die Bedeutung der Ressource und wird nicht berücksichtigt',
    modifier: [
      'dies ändert die Bedeutung dessen, was es enthält, und wird nicht verstanden; nichts davon wird gelesen',
      'eine Ressource ohne Modifier-Erweiterungen und implicitRules',
    ],
  },
  'side-in-words': {
    'words-alone': [
      'die Seite steht nur in Worten und wurde daraus gelesen',
      'eine kodierte Seite',
    ],
    'no-place': 'eine Seite hat hier keinen eigenen Platz und bleibt in Worten erhalten',
  },
  'licence-policy': {
    none: ['ein SNOMED-CT-Code, und die Regelung lässt keinen hinaus', 'kein SNOMED-CT-Code'],
    hierarchy: [
      'SNOMED CT über seine Hierarchie, die die freie Menge nicht enthält',
      'eine Kennung des Global Patient Set von 2020-09',
    ],
    'not-an-id': [
      'keine einfache SNOMED-CT-Kennung, also nicht in der freien Menge',
      'eine Kennung des Global Patient Set von 2020-09',
    ],
    'not-looked-up': [
      'eine SNOMED-CT-Kennung, von der nicht bekannt ist, ob sie frei ist; freeSet schlägt sie nach',
      'eine Kennung des Global Patient Set von 2020-09',
    ],
    'outside-free-set': [
      'eine SNOMED-CT-Kennung außerhalb der freien Menge',
      'eine Kennung des Global Patient Set von 2020-09',
    ],
  },
};
