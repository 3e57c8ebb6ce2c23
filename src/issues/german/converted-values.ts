import type { convertedValues } from '../english/converted-values.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanConvertedValues: Translated<typeof convertedValues> = {
  contradiction: {
    rejected: ['ein Vorschlag ist bestätigt und verworfen', 'eines von beiden'],
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
  'truncated-value': {
    cut: 'der Sender hat diesen Wert als abgeschnitten gekennzeichnet',
  },
  'unknown-value-type': {
    'obx-2': ['OBX-2 ist kein Werttyp', 'ein Code der Tabelle 0125'],
  },
  'unsupported-value': {
    file: ['in der Nachricht steckt eine Datei', 'Text oder eine Zahl'],
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
