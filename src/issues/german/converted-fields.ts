import type { convertedFields } from '../english/converted-fields.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanConvertedFields: Translated<typeof convertedFields> = {
  'unattached-attribute': {
    finding:
      'es gibt nicht genau einen vorhandenen Befund, den dies beschreibt; es bleibt als Text erhalten',
  },
  'conflicting-fields': {
    names: 'der Datensatz hat mehrere Namen der Person und kennzeichnet keinen als amtlichen Namen',
    measure: 'die Untersuchung hat verschiedene Werte für ein Maß; jeder bleibt erhalten',
    head: 'die Datensätze einer Untersuchung unterscheiden sich in einem Feld, das in allen gleich sein muss',
    region: 'das Regionsfeld nennt eine andere Region als die Zuordnung',
    'obr-final': ['OBR-25 ist endgültig, OBX-11 nicht', 'F oder C'],
    'several-fields': [
      'es lässt sich nicht sagen, welches von mehreren Feldern zu diesem Wert gehört; er bleibt als Text erhalten',
      'der Wert und was zu ihm gehört in einem eigenen Element, einer Zeile oder einem Segment',
    ],
  },
  'missing-field': {
    region: 'der Datensatz sagt nicht, um welche Region es geht',
    modality: [
      'der Datensatz sagt nicht, wie die Sensibilität geprüft wurde',
      'eine Modalität in der Zuordnung oder ein Wort dafür im Modalitätsfeld',
    ],
    'mapped-column': 'die Zuordnung nennt eine Spalte, die die Tabelle nicht hat',
    'exam-id': ['der Datensatz nennt seine Untersuchung nicht', '{codes}'],
    'exam-status': 'der Datensatz gibt seinen Status nicht an',
    subject: 'der Datensatz sagt nicht, wer untersucht wurde',
    examiner: 'der Datensatz sagt nicht, wer untersucht hat',
    'obx-11': ['OBX-11 sagt nicht, ob der Wert gilt', 'OBX-11'],
    'performed-start': [
      'der Datensatz sagt nicht in einer angegebenen Form, wann die Untersuchung begann',
      '{codes?}',
    ],
    'recorded-missing': [
      'der Datensatz sagt nicht, wann er geschrieben wurde, auf die Sekunde und mit Zeitzone',
      '{codes?}',
    ],
  },
  'missing-property': {
    proposal: [
      'ein bestätigter Vorschlag lässt das offen',
      'was der Satz sagt, von der Person, die bestätigt',
    ],
    'system-name': [
      'vor der Kennung der Untersuchung steht kein Name des Systems; ein anderes System kann dieselbe verwenden',
      'exam.prefix in der Zuordnung',
    ],
    'resource-id': [
      'der Bericht oder, wo es keinen gibt, die erste Beobachtung hat keine Kennung; damit hat auch die Untersuchung keine',
      'eine id oder eine fullUrl, die mit einer endet',
    ],
    confirmed: ['eine Bestätigung nennt keine Person oder keinen Zeitpunkt', 'by und at'],
    'item-kind': [
      'Einträge eines CDA-Dokuments brauchen eine Art, damit verneinte getrennt bleiben',
      'observation, negated-observation oder eine andere Art von Eintrag',
    ],
    'exam-value': ['nichts gibt das an', '{codes}'],
    region: 'weder das Ziel noch ein Feld gibt die Region an',
    modality: 'weder das Ziel noch ein Feld gibt die Modalität an',
    'exam-element': [
      'die Zuordnung muss sagen, welches Element des Exports eine Untersuchung enthält',
      'der Pfad des Elements von der Wurzel aus, wie export/exam',
    ],
  },
  'other-section': {
    'set-aside': [
      'ein Abschnitt, der keine körperliche Untersuchung ist, wurde beiseitegelegt',
      'Vorlage {code} oder LOINC {system}',
    ],
  },
  'unmapped-field': {
    kept: 'die Zuordnung nennt dieses Feld nicht; es bleibt als Text erhalten',
    'nothing-near-field': [
      'der Katalog hat nichts dieses Namens',
      'ein Ziel in fields oder der Name in text oder layout; vielleicht {codes?}',
      'ein Ziel in fields oder der Name in text oder layout',
    ],
    'nothing-near-item': [
      'der Katalog hat nichts dieses Namens',
      'ein Ziel in der map der Punkte; vielleicht {codes?}',
      'ein Ziel in der map der Punkte',
    ],
  },
  'unmapped-item': {
    kept: 'die Zuordnung führt diesen Punkt nicht; sein Datensatz bleibt als Text erhalten',
  },
  'ambiguous-mapping': {
    column: [
      'eine frühere Spalte hat denselben Namen oder eine gemeinsame Stelle',
      'eine Spalte für jede Stelle',
    ],
    'date-form': [
      'eine frühere Form liest ein Datum dieser Form anders',
      'Formen, die nicht zu verwechseln sind',
    ],
    'field-use': [
      'die Zuordnung verwendet dieses Feld in {property} und in {code}',
      'eine Verwendung je Feld',
    ],
    word: 'dieses Wort trifft auch ein anderes der Tabelle',
    'day-or-month': ['die Probe unterscheidet Tag und Monat nicht', '{codes} in dates.formats'],
  },
  'unresolved-key': {
    proposal:
      'der Satz eines bestätigten Vorschlags steht nicht an dieser Stelle einer Notiz der Untersuchung',
    'proposal-exam':
      'keine Untersuchung dieses Laufs hat die Kennung, die ein bestätigter Vorschlag nennt',
    'word-table': 'die Zuordnung hat keine Worttabelle dieses Namens',
  },
  'blank-field': {
    unstated: [
      'das Feld ist leer, und die Zuordnung sagt nicht, was das heißt',
      'das Wort "" in words des Feldes oder in noValue',
    ],
  },
};
