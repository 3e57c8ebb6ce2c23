import type { LetterWords } from '../letter-words.ts';

/** The words of letters in English. */
export const englishLetterWords: LetterWords = {
  title: {
    specialist: 'Referral letter',
    'general-practitioner': 'Letter to the general practitioner',
    patient: 'Letter to you about your examination',
    employer: 'Confirmation for the employer',
  },
  notChecked:
    'Draft of a letter, made from the record. Read it over and sign it before it is sent.',
  pageNumber: { page: 'Page', of: 'of' },
  to: 'To',
  from: 'From',
  about: 'About',
  headings: {
    reason: 'Reason for referral',
    history: 'History',
    summary: 'Clinical summary',
    findings: 'Examination findings',
    negatives: 'Looked for and not found',
    notExamined: 'Not examined, or only in part',
    plan: 'Plan and requested actions',
    told: 'Information and advice given',
    writer: 'Person completing the record',
    seen: 'What we saw',
    next: 'What happens next',
    return: 'When to come back',
  },
  signature: 'Signature',
  patient: {
    greeting: 'Dear {name},',
    examined: 'We looked at your face and neck on {date}.',
    came: 'You came because of this: {text}.',
    sign: '{sign}.',
    nothing: 'We noted no changes to tell you about in this letter.',
    more: 'There is more to talk about. We will explain it to you in person.',
    notSeen: 'We did not look at this fully: {place}.',
    referral: 'We ask this service to see you: {to}.',
    referralUnnamed: 'We ask another service to see you.',
    urgency: {
      routine: 'There is no hurry.',
      urgent: 'This should be soon.',
      asap: 'This should be as soon as can be.',
      stat: 'This should be at once.',
    },
    due: 'The date for this is {date}.',
    investigation: 'We ask for a test. We will tell you more about it.',
    reviewBy: 'We want to see you again by {date}.',
    owner: 'This person looks after it: {text}.',
    ask: 'Please ask us if anything is not clear.',
  },
  employer: {
    attended: '{name} was here for an examination on {date}.',
    statement: 'We were asked to tell you: {text}.',
    noMore: 'This letter tells nothing else of the examination.',
  },
};
