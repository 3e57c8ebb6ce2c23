import type { validation } from '../english/validation.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanValidation: Translated<typeof validation> = {
  'missing-property': {
    'search-id': ['das Suchergebnis hat keine id', 'die id, unter der der Server es führt'],
    choice: ['die erforderliche Eigenschaft fehlt', '{codes}'],
    'full-url': [
      'der Eintrag hat keine fullUrl',
      'eine absolute URL oder urn:uuid: mit einer UUID',
    ],
    'extension-part': [
      'ein Teil der Erweiterung fehlt',
      '{minimum} bis {maximum?} von {url}',
      '{minimum} oder mehr von {url}',
    ],
    'contained-id': [
      'die enthaltene Ressource hat keine id',
      'eine id, die Referenzen in der Ressource nennen können',
    ],
    'bound-code': ['es gibt keinen Code', 'ein Code aus {url}'],
    supplements: [
      'die Ergänzung nennt nicht das Codesystem, das sie ergänzt',
      'seine kanonische URL',
    ],
    'search-components': ['der zusammengesetzte Suchparameter hat keine Teile', 'component'],
    'form-answer': [
      'ein Punkt, den das Formular verlangt, hat keine Antwort',
      'eine Antwort auf den Punkt',
    ],
    profile: [
      'es sind weniger, als das Profil verlangt',
      'mindestens {minimum} im Slice {code?}',
      'mindestens {minimum}',
    ],
  },
  'invalid-value': {
    'conditional-reference': [
      'die bedingte Referenz ist keine Suche',
      'ein Ressourcentyp und Suchparameter wie Patient?identifier=a|b',
    ],
    'full-url': [
      'eine fullUrl muss absolut sein',
      'eine absolute URL oder urn:uuid: mit einer UUID',
    ],
    'spaces-at-ends': 'der Text hat Leerzeichen am Anfang oder Ende',
    uuid: [
      'nach urn:uuid: steht keine UUID',
      'Kleinbuchstaben und Ziffern wie in urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7',
    ],
    oid: ['nach urn:oid: steht keine OID', 'eine OID wie urn:oid:2.16.840.1.113883'],
    canonical: [
      'eine kanonische URL muss absolut sein',
      'eine absolute URL oder # mit der id einer enthaltenen Ressource',
    ],
    base64: [
      'der Text ist kein Base64',
      'Buchstaben, Ziffern, + und / in Vierergruppen, mit = am Ende',
    ],
    'base64-spaces': 'der Base64-Text enthält Leerzeichen oder Zeilenumbrüche',
    'decimal-digits': [
      'die Dezimalzahl hat mehr Stellen, als Systeme bewahren müssen',
      'höchstens 18 Stellen vor und 17 nach dem Punkt',
    ],
    system: [
      'ein System muss eine absolute URI sein',
      'eine URI mit Schema wie https://clinic.example/ids',
    ],
    'uri-identifier': [
      'ein Wert des Systems urn:ietf:rfc:3986 muss eine absolute URI sein',
      'eine URI mit Schema wie urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7',
    ],
    'code-space': [
      'ein Code darf keine Tabulatoren oder Zeilenumbrüche enthalten',
      'einzelne Leerzeichen',
    ],
    'element-id': 'die id eines Elements darf keine Leerzeichen enthalten',
    'extension-url': [
      'die url einer Erweiterung muss absolut sein',
      'die kanonische URL ihrer Definition',
    ],
    'extension-version': 'die url einer Erweiterung darf keine Version nennen',
    definition: [
      'die Definition wird nicht zur Prüfung verwendet',
      'eine StructureDefinition mit snapshot oder differential, ein ValueSet oder ein CodeSystem, jeweils mit url',
    ],
    'snapshot-element': 'ein Element des snapshot hat kein übergeordnetes und wird nicht geprüft',
    fixed: ['das ist nicht der Wert, den das Profil festlegt', '{code}'],
    'profile-pattern': ['der Wert entspricht nicht dem Muster des Profils', '{code}'],
    'too-small': ['der Wert liegt unter dem Mindestwert des Profils', 'mindestens {minimum}'],
    'too-great': ['der Wert liegt über dem Höchstwert des Profils', 'höchstens {maximum}'],
    'reference-space': ['die Referenz enthält ein Leerzeichen', 'eine URL ohne Leerzeichen'],
    'relative-reference': [
      'die relative Referenz hat keine Form, die FHIR kennt',
      'ein Ressourcentyp und eine id wie Patient/1',
    ],
    'coding-system': [
      'ein System muss eine absolute URI sein',
      '{system?}',
      'die URI eines Codesystems',
    ],
    'value-set-as-system': [
      'eine Wertemenge ist kein Codesystem',
      '{system?}',
      'die URI eines Codesystems',
    ],
    'other-uri-of-system': [
      'das ist nicht die URI dieses Systems',
      '{system?}',
      'die URI eines Codesystems',
    ],
    'canonical-url': [
      'die url einer Definition muss absolut sein',
      'eine absolute URL oder urn:uuid: mit einer UUID',
    ],
    fhirpath: ['der Ausdruck ist nicht als FHIRPath zu lesen', 'ein Ausdruck in FHIRPath'],
    'map-variable': [
      'die Abbildung kennt hier keine Variable dieses Namens',
      'eine Eingabe der Gruppe oder eine Variable einer Regel darum herum',
    ],
    'element-path': ['FHIR hat unter diesem Pfad kein Element', 'der Pfad eines Elements des Typs'],
    'no-profile': ['der Wert passt zu keinem der zulässigen Profile', '{codes}'],
    'slice-order': ['die Slices stehen nicht in der Reihenfolge des Profils', '{codes}'],
  },
  contradiction: {
    pages: ['ein Bundle dieser Art hat keine Seiten', 'ein Link mit anderer Beziehung'],
    'search-outcome': [
      'der Suchmodus ist outcome, die Ressource aber kein OperationOutcome',
      'ein OperationOutcome',
    ],
    'search-type': ['der Treffer hat einen anderen Typ als den gesuchten', '{type}'],
    'search-mode': [
      'das Ergebnis hat einen anderen Typ als den gesuchten und keinen Suchmodus',
      'search.mode',
    ],
    'full-url': [
      'die fullUrl endet nicht auf Typ und id der Ressource',
      '{type} und die id der Ressource am Ende',
    ],
    'request-update': [
      'die Anfrage ändert eine andere Ressource, als sie sendet',
      'Typ und id der Ressource',
    ],
    'request-create': ['die Anfrage legt einen anderen Typ an, als sie sendet', '{type?}'],
    'attachment-size': ['die Größe ist nicht die der Daten', '{count}'],
    'attachment-hash': 'der Hash ist nicht der SHA-1 der Daten',
    choice: ['{property}[x] steht mit zwei Typen', 'ein Wert eines Typs'],
    'profile-type': [
      'das Profil gilt für einen anderen Ressourcentyp',
      'ein Profil für den Typ der Ressource, nicht für {type}',
    ],
    'definition-version': 'die Definition gilt für eine andere Version als FHIR {version}',
    'reference-type': ['der Typ ist nicht der der Ressource, auf die verwiesen wird', '{type?}'],
    'concept-count': ['die Anzahl ist nicht die der Begriffe', '{count}'],
    'no-concepts': [
      'ein Codesystem ohne Inhalt enthält Begriffe',
      'keine Begriffe oder ein anderer content',
    ],
    supplement: ['nur eine Ergänzung nennt ein Codesystem, das sie ergänzt', 'supplement'],
    context: ['nur die Definition einer Erweiterung hat einen context', 'kein context'],
    'extension-url': [
      'die url der Erweiterung ist nicht die ihrer Definition',
      'die url der Definition',
    ],
    'form-order': [
      'die Punkte stehen nicht in der Reihenfolge des Formulars',
      'die Reihenfolge des Formulars',
    ],
    'form-group': [
      'eine Gruppe des Formulars hat Punkte und keine Antworten',
      'Punkte in der Gruppe',
    ],
    'form-display': [
      'dieser Punkt des Formulars wird nur angezeigt und hat keine Antwort',
      'keine Antwort',
    ],
    'form-below-answer': [
      'was unter einer Frage gefragt wird, gehört zu einer ihrer Antworten',
      'die Punkte in der Antwort',
    ],
    'form-disabled': [
      'die anderen Antworten schalten diesen Punkt des Formulars nicht frei',
      'keine Antwort',
    ],
    'form-text': ['der Text ist nicht der des Formulars', 'der Text des Punktes im Formular'],
  },
  'duplicate-key': {
    transaction: 'zwei Anfragen der Transaktion ändern dieselbe Ressource',
    definition: 'die zweite Definition mit dieser url gilt anstelle der ersten',
    concept: 'zwei Begriffe des Codesystems haben diesen Code',
    'snapshot-id': 'mehrere Elemente haben dieselbe id oder keine; nur eines davon wird geprüft',
  },
  'unreachable-entry': {
    composition: [
      'die Composition führt nicht zu diesem Eintrag',
      'Einträge, zu denen Referenzen von der Composition aus führen',
    ],
  },
  'unresolved-reference': {
    document: [
      'das Dokument enthält nicht, worauf seine Composition verweist',
      'ein Eintrag des Bundles',
    ],
    message: ['die Nachricht enthält nicht, worum es geht', 'ein Eintrag des Bundles'],
    'enable-when': [
      'das Formular hat keine Frage mit dieser linkId',
      'die linkId einer anderen Frage',
    ],
    'narrative-link': [
      'ein Verweis oder Bild im Text führt ins Leere',
      'eine id im Text oder in der Ressource',
    ],
    'full-url': ['kein Eintrag des Bundles hat diese fullUrl', 'die fullUrl eines Eintrags'],
    'other-full-url': [
      'ein Eintrag hat diesen Typ und diese id, aber eine andere fullUrl',
      'die fullUrl des Eintrags',
    ],
  },
  'invalid-narrative': {
    xhtml: '{says}, an Zeichen {count}',
  },
  'impossible-date': {
    calendar: [
      'dieses Datum oder diese Zeit gibt es nicht',
      'ein Datum des gregorianischen Kalenders, eine Zeit bis 23:59:59, eine Zeitzone bis 14:00',
    ],
  },
  'too-large': {
    text: ['der Text ist zu lang', 'höchstens {maximum} Zeichen'],
    answer: ['die Antwort ist länger, als das Formular erlaubt', 'höchstens {maximum} Zeichen'],
  },
  'empty-value': {
    blank: 'der Text besteht nur aus Leerzeichen',
    element: 'das Element hat weder Wert noch Erweiterung noch Inhalt',
  },
  'wrong-type': {
    'null-without-extension': [
      'der Wert ist null, und keine Erweiterung tritt an seine Stelle',
      'ein Wert oder eine Erweiterung an derselben Stelle der Liste daneben',
    ],
    'null-beside-null': [
      'der Wert ist null und der daneben auch',
      'eine Erweiterung oder ein Wert an derselben Stelle der Liste daneben',
    ],
    'extension-value': [
      'die Erweiterung nimmt keinen Wert dieses Typs',
      '{types?}',
      'Erweiterungen und kein Wert',
    ],
    'fixed-type': ['der Wert hat keinen Typ des Elements', '{types}'],
    answer: ['die Antwort hat keinen Typ, nach dem das Formular fragt', '{types}'],
    'profile-resource': ['die Ressource hat einen anderen Typ als das Profil', '{type}'],
    'profile-type': ['der Wert hat keinen Typ, den das Profil erlaubt', '{types}'],
  },
  'duplicate-id': {
    element: 'zwei Elemente der Ressource haben diese id',
    contained: 'zwei enthaltene Ressourcen haben diese id',
  },
  'broken-invariant': {
    extension: 'es muss entweder ein Wert oder Erweiterungen stehen, nicht beides',
    published: 'die Regel {key} gilt nicht: {says}',
    expression: 'der veröffentlichte Ausdruck ist nicht wahr',
    profile: 'eine Regel des Profils gilt nicht',
  },
  'unchecked-extension': {
    'not-held':
      'die Definition der Erweiterung liegt hier nicht vor; Ort und Inhalt werden nicht geprüft',
  },
  'misplaced-extension': {
    'not-modifying': 'diese Erweiterung modifiziert nicht und kann keine modifierExtension sein',
    modifying: 'diese Erweiterung modifiziert und muss eine modifierExtension sein',
    context: ['die Erweiterung ist für diese Stelle nicht definiert', '{types}'],
    ended: 'die Erweiterung gilt bis zur FHIR-Version {version} und nicht für diese',
  },
  'unknown-property': {
    'extension-parts': ['diese Erweiterung enthält einen Wert und keine Erweiterungen', '{types}'],
    'extension-part': ['die Erweiterung hat keinen Teil dieses Namens', '{codes}'],
    'form-item': [
      'das Formular hat an dieser Stelle keinen Punkt mit dieser linkId',
      'eine linkId des Formulars',
    ],
    slice: ['das gehört zu keinem Slice des Profils', '{codes}'],
  },
  'too-many': {
    'form-item': ['der Punkt steht zweimal da, und das Formular wiederholt ihn nicht', 'ein Punkt'],
    'form-answers': ['das Formular nimmt eine Antwort auf diese Frage', 'eine Antwort'],
    relation: ['zwei Links haben diese Beziehung', 'ein Link mit der Beziehung {code}'],
    'extension-part': [
      'ein Teil der Erweiterung kommt zu oft vor',
      '{minimum} bis {maximum?} von {url}',
      '{minimum} oder mehr von {url}',
    ],
    profile: [
      'es sind mehr, als das Profil erlaubt',
      'höchstens {maximum} im Slice {code?}',
      'höchstens {maximum}',
    ],
  },
  'unchecked-profile': {
    'not-given': 'dieses Profil wurde nicht zur Prüfung gegeben und wird nicht geprüft',
    'other-version':
      'diese Version des Profils wurde nicht zur Prüfung gegeben und wird nicht geprüft',
  },
  'unchecked-rule': {
    expression: 'der veröffentlichte Ausdruck ließ sich hier nicht auswerten',
    form: 'das beantwortete Formular wurde nicht gegeben, und die Antworten werden nicht daran geprüft',
    bound: 'die Grenze {property} kann hier nicht geprüft werden',
    slices: 'was die Slices unterscheidet, kann hier nicht geprüft werden',
    rule: 'die Regel {key} kann hier nicht geprüft werden',
    'target-profile': 'ein Profil des Ziels kann hier nicht geprüft werden',
    'value-set': 'die Wertemenge {url} kann hier nicht geprüft werden',
    'type-profiles': 'das Profil {codes} kann hier nicht geprüft werden',
  },
  'wrong-target': {
    profile: ['die Referenz führt zu etwas, das das Profil nicht erlaubt', '{types}'],
    type: ['die Referenz führt zu einem Ressourcentyp, der hier nicht erlaubt ist', '{types}'],
    'stated-type': ['dieser Ressourcentyp ist hier nicht erlaubt', '{types?}'],
  },
  'circular-reference': {
    group: 'die Gruppe von Observations ist Mitglied ihrer selbst',
    'enable-when': 'der Punkt wird von seiner eigenen Antwort freigeschaltet',
  },
  'unknown-code': {
    'check-digit': [
      'der Code hat nicht die Form der Codes seines Systems, oder seine Prüfziffer ist falsch',
      'ein Code des Systems, Ziffer für Ziffer übernommen',
    ],
    system: [
      'das Codesystem hat diesen Code nicht',
      'ein Code von {system} wie {code?}',
      'ein Code von {system}',
    ],
    type: [
      'FHIR hat keinen Typ dieses Namens',
      'ein Typ der Version oder die URL eines logischen Modells',
    ],
    'answer-option': [
      'das Formular bietet diese Antwort nicht an',
      'eine der Möglichkeiten des Punktes',
    ],
    'map-set': [
      'die Zuordnung verbindet Wertemengen, und in ihrer steht dieser Code nicht',
      'ein Code aus {url}',
    ],
    'required-set': ['kein Code stammt aus der vorgeschriebenen Wertemenge', 'ein Code aus {url}'],
    'extensible-set': [
      'kein Code stammt aus der Wertemenge, die zu verwenden ist, wo sie einen passenden hat',
      'ein Code aus {url}',
    ],
  },
  'wrong-display': {
    code: ['die Bezeichnung ist nicht die des Codes', '{codes}'],
  },
  'unknown-unit': {
    'ucum-code': ['das ist kein UCUM-Code', 'ein UCUM-Code in genauer Schreibung wie mm[Hg]'],
  },
};
