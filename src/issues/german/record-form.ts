import type { recordForm } from '../english/record-form.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanRecordForm: Translated<typeof recordForm> = {
  'not-json': {
    'ends-early': ['der Text endet zu früh', '{form}'],
    syntax: ['der Text ist kein JSON', '{form}'],
  },
  'duplicate-property': {
    twice: 'das Objekt hat diese Eigenschaft zweimal',
  },
  'too-deep': {
    levels: ['zu tief oder im Kreis verschachtelt', 'höchstens {maximum} Ebenen'],
  },
  'too-large': {
    values: ['zu viele Werte', 'höchstens {maximum}'],
    faults: ['zu viele Fehler, um weiter zu prüfen', 'höchstens {maximum}'],
    text: ['der Text ist zu lang', 'höchstens {maximum} Zeichen'],
    list: ['die Liste ist zu lang', 'höchstens {maximum} Einträge'],
    lines: ['die Zuordnung hat zu viele Zeilen', 'höchstens {maximum}'],
    mapping: 'die Zuordnungsdatei ist zu groß',
    document: ['das Dokument ist zu groß', 'höchstens {maximum} Zeichen je Dokument'],
    xml: ['der XML-Text ist zu groß', 'höchstens {maximum} Zeichen'],
    'xml-elements': ['der XML-Text hat zu viele Elemente', 'höchstens {maximum}'],
    circle: [
      '{count} Einträge verweisen im Kreis aufeinander und können nicht getrennt gesendet werden',
      'mindestens {count} Einträge in einem Bundle',
    ],
    work: ['die Eingabe macht zu viel Arbeit', 'höchstens {maximum} Schritte'],
  },
  aborted: {
    signal: 'durch das Signal des Budgets beendet: von einem Ergebnis bleibt nichts',
  },
  'internal-fault': {
    record: 'ein Fehler dieser Bibliothek hat die Arbeit an diesem Datensatz beendet: bitte melden',
  },
  'issues-cut': {
    rest: ['es wurde mehr gefunden, {count}-mal, als hier steht', 'höchstens {maximum} Meldungen'],
  },
  'unsafe-property': {
    name: 'eine Eigenschaft dieses Namens wird nicht angenommen',
  },
  'invalid-unicode': {
    surrogate: [
      'der Text enthält ein halbes Surrogatpaar, {character}',
      'Unicode-Text, der an Steuerzeichen nur Tabulator, Zeilenvorschub und Wagenrücklauf enthält',
    ],
    character: [
      'der Text enthält ein verbotenes Zeichen, {character}',
      'Unicode-Text, der an Steuerzeichen nur Tabulator, Zeilenvorschub und Wagenrücklauf enthält',
    ],
  },
  'wrong-type': {
    json: ['der Wert ist {found}', '{form?}'],
    'not-a-bundle': ['die Ressource ist kein Bundle', 'Bundle'],
    'not-a-concept-map': ['die Ressource ist keine ConceptMap', 'ConceptMap'],
    'not-a-list': ['der Wert ist keine Liste', 'eine Liste'],
    'not-an-object': ['der Wert ist kein Objekt', 'ein Objekt'],
    'not-text': ['der Wert ist kein Text', 'ein Text'],
    'not-a-flag': ['der Wert ist weder true noch false', 'true oder false'],
    'not-made': ['der Wert ist nicht, was diese Bibliothek dafür macht', 'das Ergebnis von {code}'],
    'attribute-value': [
      'dieses Attribut nimmt einen anderen Wert',
      'vielleicht {near?}, aus {codes?}',
      '{codes?}',
      'eine Größe in {unit?}',
      '{form?}',
    ],
    'xml-value': ['der Wert hat den falschen Typ', '{form}'],
    'beside-value': ['der Teil neben dem Wert ist kein Objekt', 'ein Objekt'],
  },
  'missing-property': {
    consent: 'die untersuchte Person hat der Weitergabe der Aufzeichnung nicht zugestimmt',
    required: ['die erforderliche Eigenschaft fehlt', '{form?}'],
    text: ['der Text fehlt', 'ein Text'],
    list: ['die Liste fehlt', 'eine Liste'],
    convention: [
      'mehrere Ablesungen ohne Angabe, wie der Wert daraus entstand',
      'mean, median, maximum, minimum oder last',
    ],
    target: ['das Ziel fehlt', 'ein Code; nur replace darf ihn weglassen'],
    relation: ['wie sich das Ziel zur Quelle verhält, ist nicht angegeben', '{codes}'],
    'licence-holder': 'niemand ist als Inhaber der Lizenz genannt',
    'batch-place': [
      'erst eine Antwort des Servers sagt, wo das steht, worauf ein Batch verweist',
      'eine Transaktion, eigene Stammdaten oder eine Zustellung, die die Antworten liest',
    ],
    guide: [
      'der Leitfaden verlangt {property}, was die Untersuchung nicht angibt: {url}',
      '{property}',
    ],
    identity: [
      'kein eigenes Kennungssystem ist angegeben, und unter unserem träfen die Ids zweier Praxen aufeinander',
      'eine eigene absolute URI, etwa https://clinic.example/records',
    ],
    patient: [
      'nichts sagt, wessen Aufzeichnung es ist',
      'ein Verweis auf die Person oder eine Kennung, etwa die Aktennummer',
    ],
    'held-record': [
      'nichts sagt, welcher Datensatz des Empfängers gemeint ist',
      'ein Verweis oder eine Kennung',
    ],
    forms: [
      'es gibt keine lesbare Form, in der stünde, was nicht als Daten mitgeht',
      'die Option presentedForms, etwa htmlForm()',
    ],
    signature: ['die Aufzeichnung enthält keine Signatur', 'eine Provenance mit Signatur'],
    exam: [
      'das Bundle enthält die Untersuchung nicht',
      'ein DiagnosticReport oder eine Observation dazu',
    ],
    'exam-part': [
      'das Bundle gibt {property} der Untersuchung nicht an',
      'ein Bundle, das es angibt, oder die Option supplied mit {property}',
    ],
  },
  'unknown-property': {
    schema: ['keine Eigenschaft von {type}', '{near?}'],
    object: ['keine Eigenschaft dieses Objekts', '{near?}'],
    table: ['diese Tabelle gibt es nicht', '{near?}'],
    'xml-attribute': 'FHIR hat dieses Attribut hier nicht',
    'xml-element': 'FHIR hat dieses Element hier nicht',
    'xml-instruction': 'FHIR hat keine Verarbeitungsanweisungen',
    fhir: 'FHIR hat diese Eigenschaft hier nicht',
    column: ['die Zuordnung hat eine Spalte mit unbekanntem Namen', '{codes}'],
  },
  'invalid-value': {
    'reference-type': [
      'die Referenz führt zu nichts, was hier stehen darf',
      'Typ und Id von {codes}, oder eine URL',
    ],
    form: ['der Wert hat nicht die verlangte Form', '{form?}'],
    'catalogue-code': [
      'der Wert hat nicht die Form eines Codes',
      'Kleinbuchstaben, Ziffern, Punkte und Bindestriche, höchstens 100',
    ],
    secret: ['das Geheimnis ist zu kurz', 'mindestens 32 Zeichen, die niemand erraten kann'],
    'shift-days': [
      'die Verschiebung der Daten ist keine',
      'eine ganze Zahl von Tagen, nicht 0, höchstens 36500',
    ],
    'absolute-uri': [
      'der Wert ist keine absolute URI',
      'eine absolute URI wie https://clinic.example/codes',
    ],
    'system-uri': ['der Wert ist keine absolute URI', 'die URI eines Codesystems'],
    'target-code': ['das Ziel ist kein Code', 'ein Code ohne Leerzeichen am Anfang und Ende'],
    'snomed-id': ['der Code ist keine SNOMED-CT-Kennung', '6 bis 18 Ziffern'],
    'loinc-code': ['der Code ist kein LOINC-Code', 'Ziffern, ein Bindestrich und eine Prüfziffer'],
    score: [
      'diese Skala hat diesen Punktwert nicht',
      '{codes?}',
      'eine ganze Zahl von {minimum?} bis {maximum?}',
      'eine ganze Zahl ab {minimum?}',
    ],
    'version-order': ['Fassungen müssen der Reihe nach 1, 2, 3 zählen', '{count}'],
    threshold: ['eine Schwelle muss eine Dezimalzahl sein', 'eine Dezimalzahl als Text oder off'],
    'side-difference': [
      'ein Seitenunterschied muss eine Dezimalzahl sein',
      'eine Dezimalzahl als Text',
    ],
    'language-tag': ['der Wert ist kein Sprachkürzel', 'ein Kürzel nach BCP 47 wie de oder en-GB'],
    'snomed-policy': ['diese SNOMED-CT-Regelung gibt es nicht', 'none, free-set oder licensed'],
    'snomed-edition': [
      'die Edition ist keine Versions-URI von SNOMED CT',
      'http://snomed.info/sct/<module>/version/<yyyymmdd>',
    ],
    'history-bundle': [
      'ein Bundle vom Typ history enthält mehrere Stände einer Aufzeichnung',
      'ein Bundle, das jede Ressource einmal enthält',
    ],
    'previous-entry': 'ein Eintrag des zuvor gesendeten Bundles enthält keine Ressource',
    'guide-status': ['der Leitfaden nimmt keine irrtümliche Aufzeichnung', 'ein anderes target'],
    'guide-version': ['die Profile eines Leitfadens sind die von FHIR R4', 'fhirVersion R4'],
    'detail-document': [
      'ein Dokument enthält die Teile der Untersuchung und kann nicht der Bericht allein sein',
      'everything oder notable',
    ],
    'signed-step': [
      'die Geschichte hat keine Unterzeichnung dieser Fassung',
      'die Fassung eines Schritts mit der Handlung sign',
    ],
    'filed-document': [
      'ein Dokument-Bundle enthält, wohin seine Composition führt, und keinen Verweis auf ein anderes Dokument',
      'eine collection oder transaction',
    ],
    'previous-exam': [
      'das zuvor Gesendete gehört zu einer anderen Untersuchung',
      'dieselbe Untersuchung oder die Transaktion, in der sie gesendet wurde',
    ],
    'text-between': ['zwischen Elementen steht Text', 'Werte in Attributen'],
    'one-resource': ['das Element enthält nicht genau eine Ressource', 'eine Ressource'],
    'fhir-form': ['der Wert hat nicht die Form seines Typs', '{type}'],
  },
  'empty-value': {
    text: 'der Text ist leer',
    list: 'die Liste ist leer',
    object: 'das Objekt hat keine Eigenschaften',
    organization: [
      'die Einrichtung ist nicht benannt',
      'eine Referenz, ein Name oder eine Kennung',
    ],
    'xml-attribute': 'das Attribut ist leer',
    'xml-element': 'das Element hat keinen Inhalt',
    'xml-value': 'der Wert ist leer',
    'xml-list': 'die Liste ist leer',
    'xml-object': 'das Objekt ist leer',
    neither: 'weder Wert noch Erweiterung vorhanden',
    'xml-text': 'der Text ist leer',
    map: [
      'die Tabelle hat keine Zeilen',
      'mindestens eine Zeile unter einer Überschrift mit {names}',
    ],
  },
  'unknown-code': {
    schema: ['der Wert ist keiner der zulässigen Codes', '{form?}'],
    kind: ['der Wert nennt keine bekannte Art', '{form?}'],
    table: [
      'die Tabelle {table} enthält diesen Code nicht',
      'vielleicht {near?}',
      'ein Code der Tabelle {table}',
    ],
    protocol: [
      'das Protokoll nennt eine Zeile, die die Tabelle {table} nicht enthält',
      'ein Code der Tabelle {table}',
    ],
    threshold: 'es gibt keine Schwelle mit dieser Kennung',
    'condition-value': ['diese Bedingung hat diesen Wert nicht', '{codes?}', 'kein Wert'],
    attribute: [
      'dieses Zeichen hat dieses Attribut nicht',
      'vielleicht {near?}, aus der Familie {code?}',
      'ein Attribut der Familie {code?}',
      'keine Attribute',
    ],
    'sensation-point': [
      'das ist kein Prüfpunkt der Sensibilität',
      'ein Prüfpunkt der Gruppe sensation',
    ],
    'other-kind-of-test': [
      'dieser Test gehört zu einer anderen Art von Aussage',
      'ein Test für eine Aussage der Art {kind}',
    ],
    'test-result': [
      'dieser Test hat dieses Ergebnis nicht',
      'vielleicht {near?}, aus {codes?}',
      '{codes?}',
    ],
    'scale-version': ['diese Skala hat diese Fassung nicht', '{codes}'],
    'scale-item': ['diese Skala hat diesen Punkt nicht', '{codes?}', 'keine Punkte'],
    'part-of-measure': ['diese Zeile ist kein eigenes Maß', 'das Maß {code}'],
    'measure-of-scale': ['diese Zeile ist kein eigenes Maß', 'ein scale-score der Skala {code}'],
    'resource-type': ['FHIR {version} hat keinen Ressourcentyp dieses Namens', '{near?}'],
    option: ['die Option hat diesen Wert nicht', '{codes}'],
    'table-name': 'es gibt keine Tabelle mit diesem Namen',
    'map-table': [
      'es gibt keine Tabelle dieses Namens',
      'vielleicht {near?}',
      'eine Tabelle oder die URI eines Codesystems',
    ],
    'own-code': [
      'das Codesystem dieser Bibliothek enthält diesen Code nicht; die Kodierung wird nicht exportiert',
      'ein Code seiner Tabelle',
    ],
  },
  'unknown-region': {
    table: [
      'die Tabelle regions enthält diesen Code nicht',
      'vielleicht {near?}',
      'ein Code der Tabelle regions',
    ],
  },
  'unexpected-region': {
    sign: ['dieses Zeichen wird hier nicht erwartet', 'eine Region von {codes}'],
  },
  'too-many': {
    xml: 'dieses Element darf nur einmal vorkommen',
  },
  'wrong-order': {
    xml: 'das Element steht nicht an seiner Stelle',
  },
  'undeclared-encoding': {
    'xml-declaration': ['die XML-Deklaration nennt einen anderen Zeichensatz als UTF-8', 'UTF-8'],
    'not-utf-8': ['die Eingabe ist kein UTF-8-Text', 'UTF-8'],
    mapping: ['die Zuordnungsdatei ist kein UTF-8-Text', 'UTF-8'],
  },
  'not-well-formed': {
    'ends-early': ['der Text endet zu früh', '{form}'],
    syntax: ['der Text ist kein XML', '{form}'],
  },
  'forbidden-doctype': {
    xml: ['eine Dokumenttyp-Deklaration wird nicht angenommen', 'XML ohne Dokumenttyp'],
  },
};
