import type { validationValues } from '../english/validation-values.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanValidationValues: Translated<typeof validationValues> = {
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
};
