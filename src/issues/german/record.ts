import type { record } from '../english/record.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanRecord: Translated<typeof record> = {
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
  'missing-side': {
    missing: ['die Seite fehlt', '{codes}'],
  },
  'impossible-side': {
    place: ['diese Stelle kann diese Seite nicht haben', '{codes}'],
  },
  'duplicate-key': {
    twice: [
      'dieser Schlüssel kommt zweimal vor',
      'ein Schlüssel, der in der Liste einmal vorkommt',
    ],
    examiner: ['eine andere untersuchende Person hat diesen Schlüssel', 'ein neuer Schlüssel'],
    addition: [
      'eine Ergänzung kann keine Aussage ändern',
      'ein neuer Schlüssel; oder der Schritt amend oder correct',
    ],
    'catalogue-code': 'dieser Code ist bereits vergeben',
    'map-row': 'diese Quelle und dieses Ziel stehen bereits in der Zuordnung',
    modality: 'diese Modalität ist zweimal angegeben',
    identifier: 'eine andere Observation hat diese Kennung',
  },
  'unresolved-key': {
    'plan-item': 'kein Punkt des weiteren Vorgehens hat diesen Schlüssel',
    exam: 'nichts in der Untersuchung hat diesen Schlüssel',
    table: ['die Tabelle {table} hat keine solche Zeile', 'ein Code der Tabelle {table}'],
    'attribute-family': 'kein Attribut hat diese Familie',
    unreached: 'keine Zeile führt zu diesem Code',
    judgement: 'keine Aussage hat diesen Schlüssel',
  },
  'unknown-unit': {
    ucum: [
      'diese UCUM-Einheit kennt die Bibliothek nicht',
      'vielleicht {near?}',
      'eine UCUM-Einheit wie mm',
    ],
    measure: ['diese UCUM-Einheit kennt die Bibliothek nicht', '{units}'],
  },
  'wrong-unit': {
    measure: ['dieses Maß nimmt diese Einheit nicht', '{units}'],
    dimension: ['das ist keine Einheit für {kind}', '{units}'],
    'not-a-measure': 'nur ein Maß hat eine Einheit',
    'other-kind': ['das Maß nimmt Einheiten anderer Art', '{units}'],
  },
  'impossible-date': {
    calendar: [
      'dieses Datum oder diese Zeit gibt es nicht',
      'ein Datum des gregorianischen Kalenders, eine Zeit bis 23:59:59, eine Zeitzone bis 14:00',
    ],
  },
  'reversed-dates': {
    birth: 'die Untersuchung liegt vor dem Geburtsdatum',
    end: 'die Untersuchung endet, bevor sie beginnt',
    recorded: 'die Aufzeichnung liegt vor der Untersuchung',
    carried: 'die Aussage ist aus einer Zeit nach der Untersuchung übernommen',
    statement: 'die Aussage liegt nach der Aufzeichnung',
    unconfirmed:
      'die Aussage wurde nicht erneut geprüft, ist aber auf eine Zeit nach der Übernahme datiert',
    onset: 'der Beginn liegt nach der Aufzeichnung',
    step: 'dieser Schritt liegt vor dem, auf den er folgt',
    prior: 'die frühere Untersuchung liegt nach dieser',
    rule: '{ruleId}',
  },
  'missing-reason': {
    state: ['die Begründung fehlt', 'eine Begründung, da es kein Ergebnis gibt'],
    step: ['die Begründung fehlt', 'warum die Aufzeichnung geändert wurde'],
    dismissal: 'ein Hinweis kann nur mit Begründung zurückgestellt werden',
  },
  'impossible-method': {
    point: ['dieser Prüfpunkt nimmt diese Modalität nicht', '{codes}'],
    region: ['diese Region nimmt diese Methode nicht', '{codes}'],
  },
  'not-exported': {
    guide: ['weggelassen, weil der Leitfaden mehr dazu verlangt', 'ein anderes target'],
    'withdrawn-letter': 'zu einer zurückgezogenen Aufzeichnung gibt es keinen Brief',
    'left-to-tell': 'im Brief weggelassen; eine Person soll es mitteilen',
    detail: ['{count} Aussagen fehlen in dieser Fassung der Untersuchung', 'detail: everything'],
    signature: 'eine Signatur der ganzen Aufzeichnung ist keine einer Fassung, in der Teile fehlen',
    'report-alone': [
      'das Bundle enthält den Bericht allein, ohne Aussagen der Untersuchung',
      'detail: everything',
    ],
    held: [
      'weggelassen, weil der Empfänger die Aufzeichnung laut Angabe schon hat',
      'entweder eine Referenz oder eine Beschreibung',
    ],
    withdrawn: [
      'was zurückgezogen wurde, bleibt bei einem Empfänger, der es hat',
      'die Option previous',
    ],
  },
  'illegal-step': {
    status: [
      'eine Aufzeichnung mit dem Status {status} lässt den Schritt {step} nicht zu',
      '{codes?}',
      'gar kein Schritt',
    ],
  },
  'nothing-changed': {
    same: [
      'die Änderungen lassen die Untersuchung, wie sie ist',
      'eine neue oder andere Aussage oder Beurteilung',
    ],
  },
  'lacking-statement': {
    kept: [
      'dem neu Gesandten fehlt diese Aussage, und sie wurde behalten',
      'die Aussage; oder die Option lacking, keep oder withdraw',
    ],
  },
  'draft-exam': {
    export: [
      'ein Entwurf wird nicht exportiert',
      'preliminary, final oder ein späterer Status; oder die Option allowDraft',
    ],
  },
  contradiction: {
    conclusion: [
      'eine Ergänzung kann die Beurteilung nicht ändern',
      'der Schritt amend oder correct',
    ],
    attributes: 'nur ein vorhandener Befund kann Attribute haben',
    certainty: 'nur ein vorhandener Befund kann eine Sicherheit haben',
    'reason-with-result':
      'ein Ergebnis und eine Begründung, warum es keines gibt, schließen einander aus',
    'value-or-unusable': [
      'eine Messung hat entweder einen Wert oder eine Begründung, warum es keinen gibt',
      'value oder unusable',
    ],
    comparator: 'es gibt einen Vergleichsoperator, aber keinen Wert',
    itself: 'eine Aussage kann nicht von sich selbst handeln',
    exceptions: 'nur was nicht vorhanden oder unauffällig ist, kann Ausnahmen haben',
    'not-a-member': [
      'eine Ausnahme muss in der Region ihrer Aussage liegen',
      'eine Region darunter',
    ],
    withdrawn: 'diese Aussage wurde zurückgezogen und steht in der Untersuchung',
    'stated-and-withdrawn': 'eine Aussage wird entweder neu gemacht oder zurückgezogen',
    'addition-withdraws': [
      'eine Ergänzung kann keine Aussage zurückziehen',
      'der Schritt amend oder correct',
    ],
    opposites: [
      '{keys} sagt von derselben Stelle das Gegenteil',
      'eine der beiden, oder eine andere Seite, Stelle, Zeit oder Methode',
    ],
    'open-members': [
      '{keys} sagt, dass ein Teil davon nicht oder nur teilweise untersucht wurde oder fehlt',
      'dieser Teil unter den Ausnahmen der Aussage',
    ],
    'region-circle': 'die übergeordneten Regionen führen zu dieser zurück',
    rule: '{ruleId}',
  },
  'unknown-protocol': {
    coverage: 'das Protokoll der Untersuchung ist nicht bekannt; was fehlt, lässt sich nicht sagen',
    outstanding: 'das Protokoll ist nicht bekannt; was aussteht, lässt sich nicht sagen',
    other: [
      'geprüft wurde gegen ein anderes Protokoll oder eine andere Fassung, als die Untersuchung nennt',
      '{code} {version}',
    ],
  },
  'coverage-gap': {
    silent: 'die Untersuchung schweigt zu {count} von {total} Punkten, die ihr Protokoll verlangt',
  },
  'same-exam': {
    version: 'die frühere Untersuchung ist diese selbst, in anderer Fassung',
  },
  'other-patient': {
    other: 'die frühere Untersuchung betrifft eine andere Person',
    'not-shown': 'nichts in den beiden Aufzeichnungen zeigt, dass sie dieselbe Person betreffen',
  },
  'withdrawn-exam': {
    prior: 'die frühere Untersuchung wurde abgebrochen oder irrtümlich eingegeben',
  },
  'unknown-rule-set': {
    id: 'es gibt keinen Regelsatz mit dieser Kennung',
  },
  'unused-dismissal': {
    id: 'kein Hinweis dieses Laufs hat diese Kennung',
  },
  'unchecked-resource': {
    xml: [
      'diesen Ressourcentyp hält die Bibliothek nicht',
      'ein Ressourcentyp von FHIR {version} im Namensraum http://hl7.org/fhir',
    ],
    schema: 'eine Ressource vom Typ {type} wird nicht geprüft, weil ihr Schema hier nicht vorliegt',
  },
  'too-many': {
    xml: 'dieses Element darf nur einmal vorkommen',
  },
  'wrong-order': {
    xml: 'das Element steht nicht an seiner Stelle',
  },
  'invalid-narrative': {
    namespace: [
      'der Text verwendet einen anderen Namensraum als den von XHTML',
      'xmlns="{url}" am div, ohne Präfix',
    ],
    'not-xhtml': ['der Text ist kein wohlgeformtes XHTML', 'ein div mit xmlns="{url}"'],
  },
  'withheld-code': {
    'policy-none': [
      'die Regelung lässt keinen SNOMED-CT-Code hinaus; die Kodierung wird nicht exportiert',
      'kein SNOMED-CT-Code',
    ],
    'not-looked-up': [
      'ob die Kennung frei ist, ist nicht bekannt; die Option freeSet schlägt sie nach; die Kodierung wird nicht exportiert',
      'eine Kennung des Global Patient Set von 2020-09 oder eine Lizenz',
    ],
    'outside-free-set': [
      'der Code liegt außerhalb der freien Menge; die Kodierung wird nicht exportiert',
      'eine Kennung des Global Patient Set von 2020-09 oder eine Lizenz',
    ],
    'map-coding': 'die SNOMED-CT-Regelung hält diese Kodierung der Zuordnung zurück',
    map: 'die SNOMED-CT-Regelung hält Kodierungen der Zuordnung zurück; withheldCodes zählt sie auf',
    'sent-before': 'die SNOMED-CT-Regelung hält Codes des zuvor Gesendeten zurück',
  },
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
