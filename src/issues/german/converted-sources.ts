import type { convertedSources } from '../english/converted-sources.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanConvertedSources: Translated<typeof convertedSources> = {
  'unresolved-reference': {
    result: [
      'ein Ergebnis, auf das der Bericht oder die Gruppe verweist, fehlt, sodass die Untersuchung weniger sagen würde',
      'die Ressource in einer der Dateien des Laufs',
    ],
  },
  'duplicate-key': {
    resource: ['dieselbe Ressource steht zweimal da', 'die Fassung, die gilt'],
  },
  'several-exams': {
    reports: [
      'das Bundle enthält mehrere Untersuchungen',
      'ein Bundle für jeden Bericht; JSON wird von selbst geteilt',
    ],
  },
  'malformed-record': {
    'short-line': [
      'die Zeile endet vor dem Ende ihrer letzten Spalte; ein Wert kann abgeschnitten sein',
      'eine Zeile von {count} Zeichen, oder trimmed in der Quelle der Zuordnung',
    ],
    'long-line': [
      'die Zeile hat Text hinter ihrer letzten Spalte; ihre Spalten können verschoben sein',
      'eine Zeile von {count} Zeichen',
    ],
    tab: [
      'die Zeile enthält einen Tabulator; hinter ihm ist keine Stelle gewiss',
      'Leerzeichen statt Tabulatoren',
    ],
    proposal: [
      'das ist kein Vorschlag',
      'ein JSON-Objekt mit exam, note, start, end, text und einem statement der Art finding',
    ],
    'resource-line': [
      'die Zeile ist keine Ressource, die mit anderen zusammengefügt werden kann',
      'eine FHIR-Ressource außer einem Bundle, als JSON in einer Zeile',
    ],
    line: 'die Zeile enthält keine Untersuchung',
    header: [
      'der Tabellenkopf ist keine Liste von Texten',
      'die Namen der Spalten, jeder als Text',
    ],
    quarantine: [
      'die Zeile ist kein Eintrag einer Quarantänedatei',
      'ein JSON-Objekt mit dem Text einer Untersuchung als raw',
    ],
    json: ['die Untersuchung ist kein JSON', 'JSON nach RFC 8259'],
    'json-name': ['ein Objekt nennt eine Eigenschaft zweimal', 'jede Eigenschaft einmal'],
    'no-record': 'es gibt keinen lesbaren Datensatz',
    columns: [
      'die Zeile lässt sich nicht in die Spalten der Tabelle teilen',
      'eine Zelle je Überschrift; eine Zelle mit Anführungszeichen steht in Anführungszeichen, und diese sind verdoppelt',
    ],
    'no-segment': ['die Zeile ist kein Segment', 'ein Segmentname'],
    'many-fields': ['es sind zu viele Felder', 'höchstens {maximum}'],
    'obx-ends': ['das OBX endet vor OBX-5', 'OBX-5'],
    'empty-repetition': ['OBX-5 hat eine leere Wiederholung', 'in jeder ein Wert'],
    'stray-row':
      'die Zeile ist nicht lesbar oder nennt keine Untersuchung; sie kann zur Untersuchung davor oder danach gehören',
  },
  'unclosed-quote': {
    row: [
      'die Zeile hat ein nicht geschlossenes Anführungszeichen',
      'eine Zelle je Überschrift; eine Zelle mit Anführungszeichen steht in Anführungszeichen, und diese sind verdoppelt',
    ],
  },
  'too-large': {
    records: ['zu viele Datensätze für einen Aufruf', 'höchstens {maximum}'],
    resources: [
      'es sind zu viele Ressourcen, um zu finden, was zusammengehört; keine wurde zusammengefügt',
      'höchstens {maximum} Zeichen, etwa die Ressourcen eines Teils der Personen',
    ],
    workbook: ['die Arbeitsmappe ist größer als die Grenze', 'höchstens {maximum} Byte'],
    'sheet-rows': ['das Blatt hat mehr Zeilen, als ein Blatt haben kann', 'höchstens {maximum}'],
    sheet: ['das Blatt hat mehr Text als die Grenze', 'höchstens {maximum} Zeichen'],
    'shared-strings': [
      'die Zellen der Arbeitsmappe teilen mehr Text als die Grenze',
      'höchstens {maximum} Zeichen',
    ],
    line: 'die Zeile ist länger als erlaubt',
    row: [
      'die Zeile ist länger als erlaubt',
      'eine Zelle je Überschrift; eine Zelle mit Anführungszeichen steht in Anführungszeichen, und diese sind verdoppelt',
    ],
    rows: [
      'die Untersuchung hat mehr Zeilen, als gehalten werden können',
      'höchstens {maximum} Zeilen je Untersuchung, nach Untersuchung sortiert',
    ],
    'exam-id': ['die Kennung der Untersuchung ist zu lang', 'höchstens 200 Zeichen'],
    exams: [
      'die Nachricht lässt sich nicht in ihre Untersuchungen teilen',
      'höchstens {count} Untersuchungen mit {maximum} gemeinsamen Zeichen',
    ],
    segments: ['die Nachricht hat zu viele Zeilen', 'höchstens {maximum}'],
    fields: ['das Segment hat zu viele Felder', 'höchstens {maximum}'],
    message: 'die Nachricht ist zu lang',
    json: ['die Untersuchung hat zu viel Text', 'ein kleineres Objekt'],
    'exam-element': [
      'die Untersuchung hat zu viel Text oder zu viele Elemente oder Attribute',
      'ein kleineres Untersuchungselement',
    ],
  },
  'unsupported-message': {
    'no-namespace': ['das Dokument nennt keinen Namensraum; es wird als CDA gelesen', '{url}'],
    namespace: ['das Dokument ist nicht im CDA-Namensraum', '{url}'],
    element: [
      'das Element heißt wie eine Untersuchung, steht aber im Namensraum {url}',
      'der Namensraum in der Quelle der Zuordnung',
    ],
    document: ['das Dokument ist kein ClinicalDocument', 'ClinicalDocument'],
    type: ['dieser Nachrichtentyp enthält keine Untersuchung', 'ORU^R01 oder MDM^T02'],
    version: ['diese Version von HL7 v2 wird nicht gelesen', '2.3 bis 2.8'],
    unstructured: [
      'das Dokument enthält statt Abschnitten eine Datei; nichts darin wird gelesen',
      'ein structuredBody oder ein nonXMLBody mit text/plain',
    ],
    'unstructured-text': [
      'das Dokument enthält statt Abschnitten einen einzigen Text',
      'otherSections: narrative in der Quelle der Zuordnung, damit er als Notiz bleibt',
    ],
    'no-exam-section': [
      'das Dokument hat keinen Abschnitt einer Untersuchung',
      'ein Abschnitt {code}, oder sections oder otherSections in der Quelle der Zuordnung',
    ],
  },
  'test-message': {
    processing: ['die Nachricht stammt nicht aus dem Echtbetrieb', 'P, Tabelle 0103'],
  },
  'several-patients': {
    subject:
      'der Eintrag handelt von jemand anderem als dem Patienten oder von einer Probe; er bleibt als Text',
    'record-target': ['das Dokument hat nicht genau ein recordTarget', 'eine Person je Dokument'],
    pid: ['die Nachricht hat nicht genau ein PID-Segment', 'eine Person je Nachricht'],
  },
  'duplicate-exam': {
    id: [
      'eine frühere Untersuchung dieser Eingabe hat dieselbe Kennung',
      'alle Datensätze einer Untersuchung beisammen und eine Untersuchung je Kennung',
    ],
  },
  'duplicate-record': {
    same: 'der Datensatz wiederholt einen anderen derselben Untersuchung Wort für Wort; er zählt einmal',
  },
  'unknown-escape': {
    hl7v2: [
      'eine Escape-Sequenz blieb, wie sie ist',
      'die Sequenzen F, S, T, R, E, X und die Formatbefehle',
    ],
    entity: [
      'Verweise auf nicht vordefinierte Entitäten blieben, wie sie sind',
      'amp, lt, gt, quot, apos oder eine Zeichennummer',
    ],
  },
  'layout-dropped': {
    layout: 'Einrückungen und Hervorhebungen wurden weggelassen',
  },
  'stray-text': {
    message: ['es gibt Text außerhalb jeder Nachricht', 'eine Nachricht, die mit MSH beginnt'],
    json: [
      'es gibt Daten außerhalb jeder Untersuchung',
      'alle Daten in den Objekten der Untersuchungen',
    ],
    exam: [
      'es gibt Text oder Attribute außerhalb jeder Untersuchung',
      'alle Daten in den Untersuchungselementen',
    ],
  },
  'wrong-delimiters': {
    msh: [
      'MSH-1 und MSH-2 legen keine brauchbaren Trennzeichen fest',
      'ein Feldtrenner, dann 2 bis 5 andere Zeichen, die keine Buchstaben oder Ziffern sind',
    ],
  },
  'broken-line': {
    joined: [
      'eine Zeile, die kein Segment ist, wurde an die darüber gehängt',
      'ein Zeilenumbruch im Feld als \\.br\\ oder \\X0D\\',
    ],
  },
  'batch-count': {
    trailer: [
      'der Stapel hat eine andere Zahl von Nachrichten, als sein Ende angibt',
      'BTS-1 gleich {count}',
    ],
  },
  'not-well-formed': {
    exam: ['die Untersuchung ist kein wohlgeformtes XML', 'wohlgeformtes XML'],
  },
  'forbidden-doctype': {
    exam: ['eine Dokumenttyp-Deklaration wird nicht gelesen', 'XML ohne Dokumenttyp'],
  },
  'too-deep': {
    exam: ['Elemente sind zu tief verschachtelt', 'höchstens {maximum} Ebenen'],
  },
};
