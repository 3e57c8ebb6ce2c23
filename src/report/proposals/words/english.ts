import type { ProposalReviewWords } from '../review-words.ts';

/** The words of the page in English. */
export const englishProposalReviewWords: ProposalReviewWords = {
  title: 'Proposals to confirm',
  intro:
    'Each box holds one sentence of a note and what it could say. Confirm it, change it, or reject it. Nothing is chosen beforehand, and what nobody confirms stays text.',
  patientData: 'This page holds patient data: keep it where they may be. It sends nothing.',
  needsScript: 'Confirming and saving need scripts.',
  left: '{count} more proposals are not on this page. Make the page again with the saved file to see the next.',
  earlier: '{count} decisions from before are kept in the saved file and are not asked again.',
  nothing: 'There is nothing to confirm.',
  exam: 'Examination',
  wholeNote: 'The whole note',
  below: 'Below the heading',
  parts: { finding: 'Sign', region: 'Region', side: 'Side', presence: 'Present or absent' },
  presence: { present: 'present', absent: 'absent', indeterminate: 'cannot be determined' },
  open: 'to be decided',
  noSide: 'no side stated',
  readIn: {
    sentence: 'the sentence says so',
    heading: 'its heading says so',
    note: 'the note was recorded there',
    sign: 'the only place of this sign',
  },
  unread: {
    elsewhere:
      'The text can be of another time, person or part of the body, so only the sign was read.',
    long: 'The sentence is too long to be read, so only the sign was read.',
    'goes-on': 'The next line can deny this, so only the sign was read.',
  },
  canMean: 'The words can mean',
  choices: { confirm: 'Confirm', change: 'Change and confirm', reject: 'Reject' },
  takeBack: 'Take the decision back',
  name: 'Your name, as it will stand in the record',
  nextOpen: 'Next undecided',
  save: 'Save decisions',
  told: {
    notChosen: 'not chosen',
    count: '{done} of {all} decided',
    nameMissing: 'Not saved: your name is missing.',
    nothingDecided: 'Not saved: nothing is decided yet.',
    unanswered: 'Not saved: {count} still need an answer, the first is number {number}.',
    opposite:
      'Not saved: number {number} says the opposite of another statement about the same place.',
    saved:
      'Saved as {file}: {confirmed} confirmed, {rejected} rejected. {open} undecided are not in it.',
    allDecided: 'Everything on this page is decided.',
  },
};
