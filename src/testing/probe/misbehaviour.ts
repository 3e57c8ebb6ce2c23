import { forbiddenChanges } from '../../deliver/stored/changes.ts';

/** Every way in which a server can be seen to misbehave, by the name that stands in the report. */
export const misbehaviours = {
  // the connection
  'no-connection': 'no connection can be made',
  'no-answer': 'no answer came in time',
  'slow-answer': 'an answer began and did not end in time',
  'cut-off-answer': 'the connection was closed before the answer was complete',
  'endless-redirect': 'one redirect follows another without end',
  'redirect-to-other-host':
    'a redirect or a link leads to another host; it is not followed, so that nothing is sent there',
  busy: 'the server asks to wait (429 or 503) however often it is asked',
  'out-of-time': 'the time for the whole probe is over, or the server failed too often in a row',

  // the answer
  'unexpected-status': 'an HTTP status that does not fit the request',
  'not-authorised': 'the server wants a login (401) or refuses it (403)',
  'server-fault': 'the server failed on the request (5xx)',
  'html-answer': 'the answer is a page of HTML',
  'wrong-content-type': 'the content type of the answer is not the one of FHIR JSON',
  'not-utf-8': 'the answer is not UTF-8 text',
  'not-json': 'the answer is not JSON',
  'truncated-json': 'the JSON of the answer ends too early',
  'too-large': 'the answer is larger than the limit',
  'empty-answer': 'the answer is empty where a resource is expected',
  'wrong-resource': 'the answer is not the resource that was asked for',
  'success-with-error': 'the status says success, and the OperationOutcome says error',

  // what is declared
  'wrong-version': 'the server has another version of FHIR',
  'not-declared': 'the CapabilityStatement does not declare it',
  'ignored-content-type': 'a content type that was asked for was ignored, and none refused',

  // what is kept
  ...forbiddenChanges,
  'changed-exam': 'the exam read back is not the exam that was sent',
  duplicated: 'sending again made a second copy',
  'new-version': 'sending the same again made a new version',
  'same-version': 'sending changed content made no new version',
  'not-found': 'a search does not find what was stored',
  'found-too-much': 'a search finds what does not match',
  'found-late': 'a search finds what was stored only after a while',
  'fault-accepted': 'a resource with a fault was stored',
  'fault-without-outcome': 'a fault was refused without an OperationOutcome that says why',
  'stored-in-part': 'a transaction was refused and stored in part',
  'left-behind': 'something is left behind on the server',
} as const;

/** Something that a server should not do. */
export type Misbehaviour = keyof typeof misbehaviours;

/** Something worth telling of one step. */
export interface ProbeNote {
  readonly misbehaviour: Misbehaviour;
  /**
   * An `error` makes the step fail. A `warning` is not as FHIR has it and does the record no harm: the
   * step passes, the server does not conform. `information` is something that a server may do.
   */
  readonly severity: 'error' | 'warning' | 'information';
  readonly message: string;
  /** What was asked: `GET DiagnosticReport`. */
  readonly request?: string;
}

/** Ends a step that cannot go on. */
export class Misbehaved extends Error {
  readonly misbehaviour: Misbehaviour;
  readonly request: string | undefined;

  constructor(misbehaviour: Misbehaviour, details: { detail?: string; request?: string } = {}) {
    const { detail, request } = details;
    super(detail === undefined ? misbehaviours[misbehaviour] : detail);
    this.name = 'Misbehaved';
    this.misbehaviour = misbehaviour;
    this.request = request;
  }
}
