import type { ServerResponse } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import type { AnswerFault } from '../../src/deliver/answer-faults.ts';
import {
  answerFaults,
  type DeliverOptions,
  type Delivery,
  type DeliveryState,
  deliver,
  type FhirServer,
} from '../../src/deliver/index.ts';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { withOnly } from '../../src/testing/without.ts';
import { clinic } from '../clinic.ts';
import { type FakeAnswer, type FakeServer, startFake, type Twist } from '../testing/fake-server.ts';

const lesion = examples.get('skin-lesion');
if (lesion === undefined) throw new Error('no example');
const exam = withOnly(lesion, lesion.statements.slice(0, 4), new Set(['consents', 'conditions']));
const bundle = toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction' });
const entries = bundle.entry?.length ?? 0;

let open: FakeServer[] = [];
afterEach(async () => {
  await Promise.all(open.map((one) => one.stop()));
  open = [];
});

async function serve(twist?: Twist): Promise<{ fake: FakeServer; to: FhirServer }> {
  const fake = await startFake(twist, { lax: true });
  open.push(fake);
  return {
    fake,
    to: { base: fake.url, timeout: 3_000, sleep: () => Promise.resolve() },
  };
}

async function sent(to: FhirServer, options: DeliverOptions = {}): Promise<Delivery> {
  const { value } = await deliver(bundle, to, options);
  if (value === undefined) throw new Error('no outcome');
  return value;
}

/** What is stored, without versions and times. */
function contentOf({ stored }: FakeServer): string[] {
  return [...stored]
    .map(
      ([
        name,
        {
          resource: { meta: _, ...content },
        },
      ]) => `${name} ${toJson(content)}`,
    )
    .sort();
}

type Lie = (answer: FakeAnswer, raw: ServerResponse) => unknown;

interface Bent {
  entry: { response: Record<string, unknown> }[];
}

/** Bends the entries of the response. */
function bent(change: (response: Bent) => void): Lie {
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

function placed(response: Bent, type: string): Record<string, unknown>[] {
  const found = response.entry.map((one) => one.response);
  return found.filter(({ location }) => String(location).startsWith(`${type}/`));
}

/** What a server says in place of the truth about one bundle, and the name that it gets. */
const lies: readonly (readonly [string, AnswerFault, Lie])[] = [
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
const slow: readonly (readonly [string, AnswerFault, Lie])[] = [
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

const modes = [
  ['a transaction', {}],
  ['several transactions', { most: 8 }],
  ['batches', { most: 8, as: 'batch' }],
] as const;

const held = new Map<DeliverOptions, Promise<string[]>>();

/** What an honest server holds in the end. */
function honest(options: DeliverOptions): Promise<string[]> {
  const known = held.get(options) ?? heldByHonest(options);
  held.set(options, known);
  return known;
}

async function heldByHonest(options: DeliverOptions): Promise<string[]> {
  const { fake, to } = await serve();
  expect((await sent(to, options)).result).toBe('stored');
  return contentOf(fake);
}

/** Bends the first answer to a bundle that a lie changes. What was stored by it is kept, or is not. */
function once(lie: Lie, stored: () => FakeServer['stored'], keeps: boolean): Twist {
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

async function told(
  [, name, lie]: (typeof lies)[number],
  options: DeliverOptions,
  limits: Partial<FhirServer> = {},
): Promise<void> {
  const expected = await honest(options);
  for (const keeps of [true, false]) {
    const { fake, to } = await serve(once(lie, () => fake.stored, keeps));
    const first = await sent({ ...to, ...limits }, options);
    expect(first).toMatchObject({ result: 'unknown', fault: name });
    expect(first.state.sent).toBe(fake.requests.length - 1);
    const second = await sent(to, { ...options, state: first.state });
    expect(second).toMatchObject({ result: 'stored', deviations: [] });
    expect(Object.keys(second.state.places)).toHaveLength(entries);
    expect(contentOf(fake)).toEqual(expected);
  }
}

describe.each(modes)('sent as %s, a server that', (_, options) => {
  it.each(lies)('%s gets the name %s; nothing is lost, nothing doubled', async (...row) => {
    await told(row, options);
  });
});

describe('a server that', () => {
  it.each(slow)('%s gets the name %s; nothing is lost, nothing doubled', async (...row) => {
    await told(row, {}, { timeout: 300, largestAnswer: 1_000_000 });
  });

  it('every name is given in these tests but those of connections that cannot be made', () => {
    const given = new Set([...lies, ...slow].map(([, name]) => name));
    expect(Object.keys(answerFaults).filter((name) => !given.has(name as AnswerFault))).toEqual([
      'no-place',
    ]);
  });

  it('keeps at one place what came in two batches gets the name same-place', async () => {
    let first: unknown;
    const { fake, to } = await serve(({ method }, answer, raw) => {
      if (method !== 'POST') return undefined;
      return bent((response) => {
        for (const one of placed(response, 'Observation')) {
          first ??= one['location'];
          one['location'] = first;
        }
      })(answer, raw);
    });
    expect(await sent(to, { most: 1 })).toMatchObject({ result: 'unknown', fault: 'same-place' });
    expect(fake.requests.length).toBeGreaterThan(2);
  });

  it('does not say where it keeps the patient ends a batch, which cannot refer to it', async () => {
    const { fake, to } = await serve(
      once(
        bent((response) => {
          for (const one of placed(response, 'Patient')) delete one['location'];
        }),
        () => fake.stored,
        true,
      ),
    );
    const first = await sent(to, { most: 8, as: 'batch' });
    expect(first).toMatchObject({ result: 'unknown', fault: 'no-place' });
    const second = await sent(to, { most: 8, as: 'batch', state: first.state });
    expect(second.result).toBe('stored');
  });

  it('stalls is left in time also by a fetch that heeds no signal', async () => {
    const fetch = (): Promise<Response> => new Promise(() => {});
    const delivery = await sent({ base: 'http://127.0.0.1:9/fhir', fetch, timeout: 50 });
    expect(delivery).toMatchObject({ result: 'unknown', fault: 'no-answer' });
  });
});

/** A server that makes a new resource for each conditional creation, whatever it holds. */
function forgetful(): { stored: string[]; twist: Twist } {
  const stored: string[] = [];
  const twist: Twist = ({ method, body: text }, answer) => {
    if (method !== 'POST') return;
    const asked: { request: { ifNoneExist?: string } }[] = JSON.parse(text).entry;
    const response: Bent = JSON.parse(answer.body);
    asked.forEach(({ request }, at) => {
      const one = response.entry[at]?.response;
      if (request.ifNoneExist === undefined || !/^20/.test(String(one?.['status']))) return;
      stored.push(request.ifNoneExist);
    });
  };
  return { stored, twist };
}

describe('what a server does otherwise than asked, and says so,', () => {
  it('half of a batch: only the other half is sent again, so that nothing is doubled', async () => {
    const { stored, twist } = forgetful();
    let count = 0;
    const { fake, to } = await serve((request, answer, raw) => {
      if (request.method === 'POST') count += 1;
      if (request.method === 'POST' && count === 1) {
        bent((response) => {
          for (const [at, one] of response.entry.entries()) {
            if (at % 2 === 1) one.response = { status: '503 Service Unavailable' };
          }
        })(answer, raw);
      }
      return twist(request, answer, raw);
    });
    const options = { most: 50, as: 'batch' } as const;
    const first = await sent(to, options);
    expect(first).toMatchObject({ result: 'busy', status: 503 });
    const kept = Object.keys(first.state.places).length;
    expect(kept).toBeGreaterThan(0);
    const copy: DeliveryState = structuredClone(first.state);
    const second = await sent(to, { ...options, state: copy });
    expect(second.result).toBe('stored');
    expect(Object.keys(second.state.places)).toHaveLength(entries);
    expect(stored.length).toBeGreaterThan(1);
    expect(new Set(stored).size).toBe(stored.length);
    expect(contentOf(fake)).toEqual(await honest(options));
  });

  it.each([
    ['text/plain', 'wrong-content-type'],
    ['application/json', 'wrong-content-type'],
  ])('the content type %s is told and has not failed to store', async (type, deviation) => {
    const { fake, to } = await serve((_, answer) => {
      answer.headers['content-type'] = type;
    });
    expect(await sent(to)).toMatchObject({ result: 'stored', deviations: [deviation] });
    expect(contentOf(fake)).toEqual(await honest({}));
  });

  it('other ids than those asked for are told, and followed', async () => {
    const { fake, to } = await serve(({ method }, answer) => {
      if (method === 'POST') {
        answer.body = answer.body.replaceAll(
          '"location":"Observation/',
          '"location":"Observation/x',
        );
      }
    });
    const { result, deviations, state } = await sent(to, { most: 8 });
    expect({ result, deviations }).toEqual({ result: 'stored', deviations: ['changed-ids'] });
    const places = Object.values(state.places).filter((place) => /^Observation\/x/.test(place));
    expect(places.length).toBeGreaterThan(3);
    const last = fake.requests.filter(({ method }) => method === 'POST').at(-1);
    for (const reference of last?.body.match(/"Observation\/[^"]+"/g) ?? []) {
      expect(reference).toMatch(/^"Observation\/x|^"Observation\/[^x]/);
    }
  });
});
