import type { SentenceTable } from '../facts.ts';

/** Sentences about the answers of a form. By code and reason. */
export const answers = {
  'wrong-type': {
    'not-a-response': ['the resource is not a QuestionnaireResponse', 'QuestionnaireResponse'],
    'not-a-questionnaire': ['the resource is not a Questionnaire', 'Questionnaire'],
    'answer-type': ['the answer has a type other than the one the form asks for', '{type}'],
  },
  'unknown-property': {
    item: ['the form has no such item here', '{near?}'],
  },
  'unknown-code': {
    answer: ['the form does not have that answer', 'perhaps {near?}, of {codes}', '{codes}'],
  },
  'missing-property': {
    answer: 'there is no answer, and the form needs one',
    'which-form': ['nothing says which form was filled in', '{code}'],
  },
  'too-many': {
    answers: ['the form takes one answer here', 'one answer'],
  },
  'duplicate-key': {
    item: 'this item of the form is answered in two places',
  },
  'invalid-value': {
    bound: ['the form asks for a figure, and this is a bound', 'a figure without comparator'],
    figure: ['the figure does not have the required form', '{form}'],
  },
  'wrong-unit': {
    answer: ['the form asks for another unit', '{units}'],
  },
  'implausible-figure': {
    answer: ['the figure is outside the range that the form takes', '{minimum} to {maximum}'],
    slip: [
      'the figure is unusual, as if a decimal comma had been lost; look at it again',
      '{minimum} to {maximum} {unit} as a rule',
    ],
  },
  'unknown-protocol': {
    form: ['another form, or another version of this form, was filled in', '{code}'],
  },
  'other-patient': {
    form: 'the form was filled in for a patient other than that of the exam',
  },
  'withdrawn-exam': {
    form: 'the status of the answers says that they were entered in error',
  },
  'not-understood': {
    form: [
      'this changes the meaning of the part that holds it and is not understood, so nothing is read',
      'answers without modifier extensions and implicit rules',
    ],
  },
  'not-in-exam': {
    hidden: 'after the other answers the form does not ask this, so the answer is not taken',
    'own-item': 'this item was added to the form, so its answer is not part of the exam',
  },
  contradiction: {
    'form-changed': [
      'the form was changed here, so its answers can mean something else',
      '{property} as made',
    ],
  },
  'display-mismatch': {
    'form-text': 'the form words this differently from the library',
  },
} as const satisfies SentenceTable;
