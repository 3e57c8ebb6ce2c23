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
};
