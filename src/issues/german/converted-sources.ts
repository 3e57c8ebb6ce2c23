import type { convertedSources } from '../english/converted-sources.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanConvertedSources: Translated<typeof convertedSources> = {
  'undeclared-encoding': {
    'zero-bytes': [
      'die Eingabe enthält Nullbytes: UTF-16 ohne Kennung?',
      'der Zeichensatz, den die Zuordnung angibt',
    ],
    'read-as': [
      'die Bytes gehören nicht zum angegebenen oder angenommenen Zeichensatz; gelesen als {encoding}',
      'UTF-8 oder der Zeichensatz, den die Zuordnung angibt',
    ],
    'cannot-decode': [
      'der angegebene Zeichensatz lässt sich nicht entschlüsseln',
      'ein Zeichensatz, den dieses Programm kennt, in der Zuordnung angegeben',
    ],
  },
  'lost-character': {
    replaced: 'der Text hat ein Zeichen, das schon vorher verloren ging',
  },
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
  'unreadable-input': {
    'encrypted-workbook': [
      'die Arbeitsmappe ist durch ein Kennwort geschützt',
      'eine Arbeitsmappe, die sich ohne Kennwort öffnet',
    ],
    'binary-workbook': [
      'die Arbeitsmappe hat eine ältere oder binäre Form (.xls, .xlsb)',
      'eine als .xlsx gespeicherte Arbeitsmappe',
    ],
    'not-workbook': [
      'die Datei ist keine Arbeitsmappe',
      'eine als .xlsx gespeicherte Arbeitsmappe',
    ],
    'damaged-workbook': [
      'ein Teil der Arbeitsmappe ist beschädigt oder enthält, was keine enthalten kann',
      'eine neu gespeicherte Arbeitsmappe',
    ],
    'empty-workbook':
      'keine Zelle der Arbeitsmappe oder des Blattes, das die Zuordnung nennt, enthält etwas',
    'no-sheet': [
      'die Arbeitsmappe hat kein Blatt dieses Namens oder an dieser Stelle',
      'der Name eines Blattes oder seine Stelle ab 1',
    ],
    'several-sheets': [
      '{count} Blätter der Arbeitsmappe enthalten Zellen, und die Zuordnung sagt nicht, welches gemeint ist',
      'sheet in der Quelle der Zuordnung: der Name eines Blattes oder seine Stelle ab 1',
    ],
    input: [
      'die Eingabe lässt sich nicht lesen ({error})',
      'eine Textdatei, eine gzip-Datei, ein zip-Archiv oder ein Ordner davon',
    ],
    'not-zip': [
      'die Datei ist kein zip-Archiv',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'zip64-end': [
      'das zip64-Ende fehlt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'directory-bounds': [
      'das Verzeichnis liegt außerhalb der Grenzen',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'directory-damaged': [
      'das Verzeichnis ist beschädigt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'zip64-size': [
      'eine zip64-Größe fehlt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'archive-short': [
      'das Archiv ist kürzer, als es angibt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'size-bounds': [
      'eine Größe liegt außerhalb der Grenzen',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    archive: [
      'das Archiv lässt sich nicht lesen',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    encrypted: [
      'der Eintrag ist verschlüsselt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    method: [
      'der Eintrag ist anders als mit store oder deflate gepackt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'leads-out': [
      'der Name des Eintrags führt aus dem Archiv hinaus',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'entry-long': [
      'der Eintrag ist länger, als das Archiv angibt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'entry-short': [
      'der Eintrag ist kürzer, als das Archiv angibt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    checksum: [
      'die Prüfsumme des Eintrags ist nicht die des Archivs',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'no-header': [
      'der Eintrag hat keinen lokalen Kopf',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'ends-within': [
      'das Archiv endet mitten in einem Eintrag',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
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
  'workbook-feature': {
    'sheet-read': 'dieses Blatt, das {count}. der Arbeitsmappe, wird gelesen',
    'hidden-sheet':
      'dieses Blatt, das {count}. der Arbeitsmappe, wird gelesen, obwohl es ausgeblendet ist',
    'further-sheet':
      'dieses Blatt, das {count}. der Arbeitsmappe, enthält Zellen und wird nicht gelesen',
    formulas:
      'Zellen mit Formeln: {count}; es gelten die Werte, die in der Datei stehen, und keine wird berechnet',
    'merged-cells': [
      'verbundene Bereiche: {count}; die erste Zelle jedes Bereichs enthält seinen Wert, die anderen sind leer',
      'ein Wert in jeder Zelle oder fillDown in der Quelle der Zuordnung',
    ],
    'hidden-rows': 'ausgeblendete Zeilen mit Inhalt: {count}; sie werden gelesen wie die anderen',
    'hidden-columns':
      'ausgeblendete Spalten mit Inhalt: {count}; sie werden gelesen wie die anderen',
  },
  'damaged-value': {
    'error-cell': [
      'die Zelle enthält einen Fehler wie #NV statt eines Wertes; er bleibt als Text erhalten',
      'der Wert, wie er eingegeben wurde',
    ],
    'no-result': [
      'die Zelle enthält eine Formel ohne ihren Wert, und keine wird berechnet; die Formel bleibt als Text erhalten',
      'eine Arbeitsmappe, die vor dem Speichern berechnet wurde',
    ],
    'lost-digits': [
      'die Zahl hat mehr Stellen, als eine Tabellenkalkulation behält; sie bleibt als Text erhalten',
      'die Zahl als Text',
    ],
    'no-date': [
      'die Zahl ist kein Tag und keine Zeit dieser Arbeitsmappe, oder ein Teil davon wurde hinzugefügt; sie bleibt als Text erhalten',
      'der Tag oder die Zeit vollständig',
    ],
    'exam-id':
      'die Kennung der Untersuchung sieht aus, als hätte eine Tabellenkalkulation sie verändert',
    'patient-number': [
      'die Nummer hat nicht die Form, die die Zuordnung angibt; eine Tabellenkalkulation kann sie verändert haben',
      '{code?}',
    ],
    value: [
      'das sieht aus wie ein Wert, den eine Tabellenkalkulation verändert hat',
      'der Wert, wie er eingegeben wurde',
    ],
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
