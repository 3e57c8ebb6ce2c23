import type { recordMeaning } from '../english/record-meaning.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanRecordMeaning: Translated<typeof recordMeaning> = {
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
    table: [
      'die Tabelle {table} hat keine solche Zeile',
      'vielleicht {near?}, aus der Tabelle {table}',
      'ein Code der Tabelle {table}',
    ],
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
