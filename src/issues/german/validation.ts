import type { validation } from '../english/validation.ts';
import type { Translated } from '../language.ts';
import { germanValidationValues } from './validation-values.ts';

/** The same sentences as the English ones, in German. */
export const germanValidation: Translated<typeof validation> = {
  ...germanValidationValues,
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
