import type { ServerResponse } from 'node:http';
import type { AnswerFault } from '../../../src/deliver/answer-faults.ts';
import { toJson } from '../../../src/index.ts';
import type { FakeAnswer, FakeServer, Twist } from '../../testing/fake-server.ts';
import { bundle } from './sent-exam.ts';
export type Lie = (answer: FakeAnswer, raw: ServerResponse) => unknown;

export interface Bent {
  entry: { response: Record<string, unknown> }[];
}

/** Bends the entries of the response. */
export function bent(change: (response: Bent) => void): Lie {
  return (answer) => {
    const response = JSON.parse(answer.body);
    change(response);
    answer.body = JSON.stringify(response);
  };
}

const body =
  (text: string, more: Partial<FakeAnswer> = {}): Lie =>
  (answer) => {
    Object.assign(answer, { body: text, ...more });
  };

export function placed(response: Bent, type: string): Record<string, unknown>[] {
  const found = response.entry.map((one) => one.response);
  return found.filter(({ location }) => String(location).startsWith(`${type}/`));
}

/** What a server says in place of the truth about one bundle, and the name that it gets. */
export const lies: readonly (readonly [string, AnswerFault, Lie])[] = [
  [
    'says success with an OperationOutcome of an error',
    'success-with-error',
    body('{"resourceType":"OperationOutcome","issue":[{"severity":"error","code":"exception"}]}'),
  ],
  [
    'says success with an OperationOutcome that says nothing',
    'wrong-resource',
    body('{"resourceType":"OperationOutcome","issue":[{"severity":"information","code":"x"}]}'),
  ],
  ['answers with what was sent', 'wrong-resource', body(toJson(bundle))],
  [
    'answers with a search set',
    'wrong-resource',
    body('{"resourceType":"Bundle","type":"searchset"}'),
  ],
  ['answers with a page', 'html-answer', body('<!doctype html><html><p>Welcome</p></html>')],
  ['answers with nothing', 'empty-answer', body('')],
  ['answers with white space', 'empty-answer', body(' \n')],
  ['answers with half of the JSON', 'not-json', body('{"resourceType":"Bun')],
  ['answers with words', 'not-json', body('ok')],
  ['will do it later', 'not-done-yet', body('', { status: 202 })],
  ['is behind a gateway that gave up', 'gave-up', body('', { status: 504 })],
  [
    'answers for one entry too few',
    'wrong-count',
    bent((response) => {
      response.entry.pop();
    }),
  ],
  [
    'answers for one entry too many',
    'wrong-count',
    bent((response) => {
      response.entry.push({ response: { status: '201' } });
    }),
  ],
  [
    'answers for no entry',
    'wrong-count',
    bent((response) => {
      response.entry = [];
    }),
  ],
  [
    'says that the report is a patient',
    'wrong-place',
    bent((response) => {
      for (const one of placed(response, 'DiagnosticReport')) one['location'] = 'Patient/1';
    }),
  ],
  [
    'says that the patient is an organisation',
    'wrong-place',
    bent((response) => {
      for (const one of placed(response, 'Patient')) one['location'] = 'Organization/1';
    }),
  ],
  [
    'keeps all findings at one place',
    'same-place',
    bent((response) => {
      for (const one of placed(response, 'Observation')) one['location'] = 'Observation/1';
    }),
  ],
  [
    'redirects to another host',
    'redirect',
    body('', { status: 307, headers: { location: 'http://127.0.0.1:9/fhir' } }),
  ],
  ['redirects to itself', 'redirect', body('', { status: 302, headers: { location: '/fhir' } })],
  [
    'hangs up',
    'no-connection',
    (_, raw) => {
      raw.destroy();
      return true;
    },
  ],
  [
    'hangs up in the middle of the answer',
    'no-connection',
    (answer, raw) => {
      raw.writeHead(200, { 'content-type': 'application/fhir+json', 'content-length': '99999' });
      raw.write(answer.body.slice(0, 100), () => raw.destroy());
      return true;
    },
  ],
  [
    'answers with bytes that are no text',
    'not-utf-8',
    (_, raw) => {
      raw.writeHead(200, { 'content-type': 'application/fhir+json' });
      raw.end(Buffer.from([0x7b, 0xff, 0xfe, 0x7d]));
      return true;
    },
  ],
];

/** Lies that take their time: they get little of it. */
export const slow: readonly (readonly [string, AnswerFault, Lie])[] = [
  ['never answers', 'no-answer', () => true],
  [
    'answers drop by drop',
    'no-answer',
    (answer, raw) => {
      raw.writeHead(200, { 'content-type': 'application/fhir+json' });
      let at = 0;
      const timer = setInterval(() => raw.write(answer.body.slice(at, ++at)), 20);
      raw.on('close', () => clearInterval(timer));
      return true;
    },
  ],
  ['answers without end', 'too-large', body(' '.repeat(2_000_000))],
];

/** Bends the first answer to a bundle that a lie changes. What was stored by it is kept, or is not. */
export function once(lie: Lie, stored: () => FakeServer['stored'], keeps: boolean): Twist {
  let told = false;
  let before: [string, Kept][] = [];
  return ({ method, path }, answer, raw) => {
    if (method !== 'POST' || path !== '' || told) return undefined;
    const truth = JSON.stringify(answer);
    const answered = lie(answer, raw);
    told = answered === true || truth !== JSON.stringify(answer);
    if (told && !keeps) {
      stored().clear();
      for (const [name, one] of before) stored().set(name, one);
    }
    before = [...stored()];
    return answered;
  };
}

type Kept = FakeServer['stored'] extends Map<string, infer One> ? One : never;
