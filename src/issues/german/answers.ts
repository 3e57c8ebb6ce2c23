import type { answers } from '../english/answers.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanAnswers: Translated<typeof answers> = {
  'wrong-type': {
    'not-a-response': ['die Ressource ist keine QuestionnaireResponse', 'QuestionnaireResponse'],
    'not-a-questionnaire': ['die Ressource ist kein Questionnaire', 'Questionnaire'],
    'answer-type': ['die Antwort ist von anderer Art, als das Formular verlangt', '{type}'],
  },
  'unknown-property': {
    item: ['das Formular hat hier kein solches Element', '{near?}'],
  },
  'unknown-code': {
    answer: ['das Formular hat diese Antwort nicht', 'vielleicht {near?}, von {codes}', '{codes}'],
  },
  'missing-property': {
    answer: 'die Antwort fehlt, und das Formular braucht eine',
    'which-form': ['nichts sagt, welches Formular ausgefüllt wurde', '{code}'],
  },
  'too-many': {
    answers: ['das Formular nimmt hier eine Antwort', 'eine Antwort'],
  },
  'duplicate-key': {
    item: 'dieses Element des Formulars ist an zwei Stellen beantwortet',
  },
  'invalid-value': {
    bound: [
      'das Formular verlangt einen Wert, und dies ist eine Grenze',
      'ein Wert ohne Vergleichszeichen',
    ],
    figure: ['der Wert hat nicht die verlangte Form', '{form}'],
  },
  'wrong-unit': {
    answer: ['das Formular verlangt eine andere Einheit', '{units}'],
  },
  'implausible-figure': {
    answer: [
      'der Wert liegt außerhalb dessen, was das Formular annimmt',
      '{minimum} bis {maximum}',
    ],
    slip: [
      'der Wert ist ungewöhnlich, wie wenn ein Dezimalkomma verloren ging; bitte noch einmal ansehen',
      'in der Regel {minimum} bis {maximum} {unit}',
    ],
  },
  'unknown-protocol': {
    form: ['ausgefüllt wurde ein anderes Formular oder eine andere Fassung davon', '{code}'],
  },
  'other-patient': {
    form: 'das Formular wurde für eine andere Person ausgefüllt als die der Untersuchung',
  },
  'withdrawn-exam': {
    form: 'die Antworten wurden irrtümlich eingegeben, wie ihr Status sagt',
  },
  'not-understood': {
    form: [
      'dies ändert die Bedeutung dessen, worin es steht, und wird nicht verstanden, sodass nichts gelesen wird',
      'Antworten ohne Modifier Extensions und Implicit Rules',
    ],
  },
  'not-in-exam': {
    hidden:
      'das Formular fragt dies nach den anderen Antworten nicht, sodass die Antwort nicht übernommen wird',
    'own-item':
      'dieses Element wurde dem Formular hinzugefügt, sodass seine Antwort nicht Teil der Untersuchung ist',
  },
  contradiction: {
    'form-changed': [
      'das Formular wurde hier geändert, sodass seine Antworten etwas anderes bedeuten können',
      '{property} wie hergestellt',
    ],
  },
  'display-mismatch': {
    'form-text': 'das Formular fragt dies mit anderen Worten, als die Bibliothek schreibt',
  },
};
