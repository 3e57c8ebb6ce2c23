/** Why an answer does not tell what became of what was sent, by the name that stands in a delivery. */
export const answerFaults = {
  'no-connection': 'no connection was made, or it broke before the answer was whole',
  'no-answer': 'the answer was not whole in time',
  'too-large': 'the answer is longer than the limit',
  'not-utf-8': 'the answer is not UTF-8 text',
  redirect: 'the answer leads elsewhere; it is not followed, so that nothing is sent there',
  'not-done-yet': 'the server says that it will do it later (202)',
  'gave-up': 'a gateway gave up waiting (408, 502, 504)',
  'empty-answer': 'success is said with an empty answer',
  'html-answer': 'success is said with a page of HTML',
  'not-json': 'success is said with what is not JSON',
  'success-with-error': 'the status says success, and the OperationOutcome says error',
  'wrong-resource': 'success is said with another resource than the response to the bundle',
  'wrong-count': 'the response has another number of entries than the bundle',
  'wrong-place': 'an entry is said to be stored as another type of resource',
  'same-place': 'two entries are said to be stored at one place',
  'no-place': 'the server does not say where it stored what others refer to',
} as const;

/** @see answerFaults */
export type AnswerFault = keyof typeof answerFaults;

/** What is not as FHIR has it in an answer that says all the same what became of what was sent. */
export const answerDeviations = {
  'wrong-content-type': 'the content type of the answer is not the one of FHIR JSON',
  'changed-ids': 'resources are stored under other ids than those asked for',
} as const;

/** @see answerDeviations */
export type AnswerDeviation = keyof typeof answerDeviations;
