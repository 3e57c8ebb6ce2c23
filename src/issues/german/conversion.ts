import type { conversion } from '../english/conversion.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanConversion: Translated<typeof conversion> = {
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
  contradiction: {
    answers:
      'die Untersuchung hat hier Antworten, die nicht zugleich gelten können; alle bleiben als Text erhalten',
    narrative: ['ein Fließtext bleibt, wie er ist, und wird nie als Code gelesen', 'note'],
    'no-result': [
      'dieser Code ist kein Ergebnis',
      'withdrawn, text oder ein Zustand mit Begründung (Tabelle 0085)',
    ],
    'outer-entry':
      'ein Eintrag um diesen herum ist verneint, geplant oder zurückgenommen, sodass er vielleicht nicht gilt',
    'null-entry': [
      'der Eintrag sagt, dass es keine Angabe gibt, und hat einen Wert; beides bleibt erhalten',
      'ein Wert oder ein nullFlavor am Eintrag',
    ],
    'null-beside-field':
      'die Quelle sagt neben diesem Feld, dass es keine Angabe gibt; es wird nicht übernommen',
    'null-beside-value': [
      'die Quelle sagt neben diesem Wert, dass es keinen gibt; beides bleibt als Text erhalten',
      'ein Wert oder eine Begründung, warum es keinen gibt',
    ],
    'own-words': [
      'der Code und die Worte daneben widersprechen einander; beides bleibt als Text erhalten',
      'ein Code und Worte, die dasselbe sagen',
    ],
  },
  'unknown-word': {
    cell: 'eine Operation der Zuordnung passt nicht auf diesen Text, der ganz bleibt',
    role: [
      'die Zuordnung führt dieses Wort nicht in {property}',
      'ein Wort aus {property} in der Zuordnung',
    ],
    concern:
      'die Beurteilung hat keinen Grad der Besorgnis, den die Zuordnung führt; sie bleibt als Text erhalten',
    'exam-status': 'die Zuordnung führt diesen Status nicht',
    gender: 'die Zuordnung führt dieses Wort für ein Geschlecht nicht',
    'item-status':
      'die Zuordnung führt diesen Status nicht; der Datensatz bleibt als Text erhalten',
    'many-answers': 'das Feld hat zu viele Antworten für eine Wortliste',
    open: ['das Wort hat noch keine Bedeutung', 'eine Bedeutung statt text'],
    'several-readings': ['das Wort hat mehrere Lesarten', '{codes}'],
    number: [
      'die Zuordnung gibt diesem Wort hier keine Bedeutung',
      'eine Zahl oder ein Wort für keinen Wert',
    ],
    'one-of': ['die Zuordnung gibt diesem Wort hier keine Bedeutung', 'ein Wort für {codes}'],
    finding: ['die Zuordnung gibt diesem Wort hier keine Bedeutung', 'ein Wort für einen Befund'],
    sensation: [
      'die Zuordnung gibt diesem Wort hier keine Bedeutung',
      'ein Wort für ein Ergebnis einer Sensibilitätsprüfung',
    ],
    test: [
      'die Zuordnung gibt diesem Wort hier keine Bedeutung',
      'ein Wort für ein Ergebnis des Tests {code}',
    ],
    state: [
      'die Zuordnung gibt diesem Wort hier keine Bedeutung',
      'ein Wort für normal, abnormal oder einen Zustand mit Begründung',
    ],
    condition: [
      'die Zuordnung gibt diesem Wort hier keine Bedeutung',
      'ein Wort für einen Wert der Bedingung {code}',
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
  'wrong-unit': {
    measure: ['dieses Maß nimmt diese Einheit nicht', '{units}'],
  },
  'implausible-value': {
    limits: [
      'die Zahl liegt außerhalb der Grenzen, die die Zuordnung erwartet',
      '{minimum?} bis {maximum?} {unit?}',
      '{minimum?} bis {maximum?}',
      'mindestens {minimum?} {unit?}',
      'mindestens {minimum?}',
      'höchstens {maximum?} {unit?}',
      'höchstens {maximum?}',
    ],
  },
  'not-a-number': {
    score: ['der Wert ist keine ganze Zahl', 'ein Punktwert'],
    count: ['der Wert ist keine Anzahl', 'eine ganze Zahl'],
    number: [
      'der Wert ist keine Zahl',
      'eine Zahl mit dem Dezimalzeichen {character} und ohne Tausenderzeichen',
    ],
  },
  'decimal-mark': {
    'two-readings': [
      'die Zahl lässt sich auf zwei Arten lesen',
      'eine Zahl mit dem Dezimalzeichen {character} und ohne Tausenderzeichen',
    ],
  },
  'missing-method': {
    record: [
      'eine Region kann ohne Methode nicht unauffällig oder auffällig genannt werden',
      'eine Methode in der Zuordnung oder in einem Feld des Datensatzes',
    ],
    mapping:
      'eine Region kann nicht unauffällig oder auffällig genannt werden, ohne zu sagen, wie sie untersucht wurde',
  },
  'unknown-unit': {
    word: [
      'die Zuordnung sagt nicht, welche Einheit dieses Wort ist',
      'ein Wort aus units in der Zuordnung',
    ],
    mapping: ['die Bibliothek kennt diese Einheit nicht', '{units}'],
  },
  'unit-conflict': {
    fields: 'Wert und Einheitenfeld geben verschiedene Einheiten an',
  },
  'missing-unit': {
    nowhere: [
      'weder der Datensatz noch die Zuordnung nennt die Einheit',
      'eine Einheit im Wert, in einem Feld oder in der Zuordnung',
    ],
  },
  'missing-side': {
    sensation: [
      'die Seite einer Sensibilitätsprüfung fehlt oder ist nicht möglich',
      'right, left, both oder midline',
    ],
    target: ['weder das Ziel noch ein Feld gibt die Seite an', '{codes}'],
  },
  'impossible-side': {
    place: ['diese Stelle kann diese Seite nicht haben', '{codes}'],
  },
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
  'invalid-value': {
    'column-end': [
      'die Spalte hat kein Ende, zwei davon oder eines vor ihrem Anfang',
      'length oder end, aber nur eines davon',
    ],
    delimiter: 'die erste Zeile der Tabelle nennt ein anderes Trennzeichen als die Zuordnung',
    'cell-pattern': [
      'dem Muster lässt sich nicht auf nur eine Weise folgen',
      'Text mit Platzhaltern für Zahl, Wort oder Text, zwischen je zweien etwas anderes',
    ],
    'out-not-empty': [
      'der Ordner ist nicht leer',
      'ein leerer Ordner oder die Option zum Fortsetzen',
    ],
    'out-no-run': ['der Ordner enthält keinen abgebrochenen Lauf', 'ein Ordner mit {code}'],
    'out-other-run': [
      'der Lauf in diesem Ordner hatte andere Eingaben oder Einstellungen',
      'dieselben Eingaben und Einstellungen',
    ],
    syntax: ['die Zuordnung gilt für eine andere Syntax', '{code}'],
    zone: [
      'diese Zeitzone gibt es nicht',
      'ein Versatz wie +01:00 oder ein Name wie Europe/Lisbon',
    ],
    'date-form': [
      'das ist keine Datumsform',
      'eine Form aus YYYY, MM, DD, HH, mm, ss wie DD/MM/YYYY HH:mm',
    ],
    pattern: 'das Muster ist kein regulärer Ausdruck',
    'word-meaning': [
      'ein Wort hat eine Bedeutung, die ein Ziel der Art {kind} nicht hat',
      '{codes}',
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
    line: 'die Zeile enthält keine Untersuchung',
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
  'missing-property': {
    proposal: [
      'ein bestätigter Vorschlag lässt das offen',
      'was der Satz sagt, von der Person, die bestätigt',
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
  'not-an-event': {
    mood: ['der Eintrag ist geplant, angeordnet oder ein Ziel', 'moodCode EVN'],
  },
  'broken-reference': {
    narrative: 'der Eintrag verweist auf Text, den es nicht gibt',
  },
  'reversed-dates': {
    'passed-over':
      'diese Zeit liegt nach dem Schreiben des Datensatzes; die nächste der Zuordnung gilt',
  },
  'narrative-conflict': {
    parts: [
      'Eintrag und Text scheinen sich zu widersprechen: {names}',
      'Text und Eintrag, die dasselbe sagen',
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
  'withdrawn-value': {
    status: 'die Quelle hat diesen Wert zurückgezogen',
  },
  'side-conflict': {
    pair: 'das Ziel eines Paares hat selbst eine Seite',
    within: ['dieses Seitenwort gehört zu einem anderen Körperteil', 'eine Region in {code}'],
    item: 'Seitenfeld und Name des Punktes widersprechen einander',
    value: 'der Wert nennt eine andere Seite als sein Feld',
    name: 'der Name des Feldes nennt eine andere Seite als die Zuordnung',
    'own-words': [
      'der Code und die Worte daneben nennen verschiedene Seiten; beides bleibt als Text erhalten',
      'ein Code und Worte derselben Seite',
    ],
    'several-sides': [
      'die Seitenfelder nennen Seiten, die nicht zusammengehören',
      'eine Seite oder links und rechts',
    ],
  },
  'unknown-side': {
    word: [
      'die Zuordnung führt dieses Wort für eine Seite nicht',
      'ein Wort aus sides in der Zuordnung',
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
  'truncated-value': {
    cut: 'der Sender hat diesen Wert als abgeschnitten gekennzeichnet',
  },
  'unknown-value-type': {
    'obx-2': ['OBX-2 ist kein Werttyp', 'ein Code der Tabelle 0125'],
  },
  'unsupported-value': {
    file: ['in der Nachricht steckt eine Datei', 'Text oder eine Zahl'],
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
  'unreadable-date': {
    'birth-date': ['das Geburtsdatum lässt sich nicht lesen', '{codes?}'],
    sample: 'keine übliche Datumsform liest die ganze Probe',
    'performed-start': [
      'der Datensatz sagt nicht in einer angegebenen Form, wann die Untersuchung begann',
      '{codes?}',
    ],
    'date-only': ['nur das Datum wird übernommen; die Zeit bleibt als Text erhalten', '{codes?}'],
    time: ['die Zeit lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
    recorded: ['die Zeit der Aufzeichnung lässt sich nicht lesen', '{codes?}'],
    'recorded-missing': [
      'der Datensatz sagt nicht, wann er geschrieben wurde, auf die Sekunde und mit Zeitzone',
      '{codes?}',
    ],
    item: ['die Zeit des Punktes lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
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
  'unknown-region': {
    within: ['diese Stelle gibt es nicht', 'ein Code der Tabelle sections oder regions'],
    'not-a-member': [
      'eine Ausnahme muss in der Region ihres Ziels liegen',
      'eine Region unter der des Ziels',
    ],
    table: [
      'die Tabelle regions enthält diesen Code nicht',
      'vielleicht {near?}',
      'ein Code der Tabelle regions',
    ],
  },
  'unknown-code': {
    meaning: [
      'kein Wort kann das bedeuten',
      'vielleicht {near?}',
      'eine Bedeutung, die ein Feld haben kann',
    ],
    table: [
      'die Tabelle {table} enthält diesen Code nicht',
      'vielleicht {near?}',
      'ein Code der Tabelle {table}',
    ],
    'scale-version': ['diese Skala hat diese Fassung nicht', '{codes}'],
    'part-of-measure': ['diese Zeile ist kein eigenes Maß', 'das Maß {code}'],
    'measure-of-scale': ['diese Zeile ist kein eigenes Maß', 'ein scale-score der Skala {code}'],
    reason: 'die Tabelle reasons enthält diesen Code nicht',
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
  'not-well-formed': {
    exam: ['die Untersuchung ist kein wohlgeformtes XML', 'wohlgeformtes XML'],
  },
  'forbidden-doctype': {
    exam: ['eine Dokumenttyp-Deklaration wird nicht gelesen', 'XML ohne Dokumenttyp'],
  },
  'too-deep': {
    exam: ['Elemente sind zu tief verschachtelt', 'höchstens {maximum} Ebenen'],
  },
  'impossible-date': {
    'birth-date': ['das Geburtsdatum lässt sich nicht lesen', '{codes?}'],
    'performed-start': [
      'der Datensatz sagt nicht in einer angegebenen Form, wann die Untersuchung begann',
      '{codes?}',
    ],
    'date-only': ['nur das Datum wird übernommen; die Zeit bleibt als Text erhalten', '{codes?}'],
    time: ['die Zeit lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
    recorded: ['die Zeit der Aufzeichnung lässt sich nicht lesen', '{codes?}'],
    'recorded-missing': [
      'der Datensatz sagt nicht, wann er geschrieben wurde, auf die Sekunde und mit Zeitzone',
      '{codes?}',
    ],
    item: ['die Zeit des Punktes lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
  },
  'missing-zone': {
    'time-of-day':
      'der Zeitpunkt der Aufzeichnung ist ein Datum; die Uhrzeit ist die, die die Zuordnung angibt',
    'birth-date': ['das Geburtsdatum lässt sich nicht lesen', '{codes?}'],
    'performed-start': [
      'der Datensatz sagt nicht in einer angegebenen Form, wann die Untersuchung begann',
      '{codes?}',
    ],
    'date-only': ['nur das Datum wird übernommen; die Zeit bleibt als Text erhalten', '{codes?}'],
    time: ['die Zeit lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
    recorded: ['die Zeit der Aufzeichnung lässt sich nicht lesen', '{codes?}'],
    'recorded-missing': [
      'der Datensatz sagt nicht, wann er geschrieben wurde, auf die Sekunde und mit Zeitzone',
      '{codes?}',
    ],
    item: ['die Zeit des Punktes lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
  },
  'ambiguous-time': {
    'birth-date': ['das Geburtsdatum lässt sich nicht lesen', '{codes?}'],
    'performed-start': [
      'der Datensatz sagt nicht in einer angegebenen Form, wann die Untersuchung begann',
      '{codes?}',
    ],
    'date-only': ['nur das Datum wird übernommen; die Zeit bleibt als Text erhalten', '{codes?}'],
    time: ['die Zeit lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
    recorded: ['die Zeit der Aufzeichnung lässt sich nicht lesen', '{codes?}'],
    'recorded-missing': [
      'der Datensatz sagt nicht, wann er geschrieben wurde, auf die Sekunde und mit Zeitzone',
      '{codes?}',
    ],
    item: ['die Zeit des Punktes lässt sich nicht lesen; sie bleibt als Text erhalten', '{codes?}'],
  },
};
