import { afterEach, describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import {
  type DeliverOptions,
  type DeliveryState,
  deliver,
  type FhirServer,
  heldVersions,
  readCapabilities,
  settingsFor,
} from '../../src/deliver/index.ts';
import { type AnyBundle, type Exam, toBundleOrThrow, toJson } from '../../src/index.ts';
import { withOnly } from '../../src/testing/without.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { type FakeAnswer, type FakeServer, startFake, type Twist } from '../testing/fake-server.ts';

const lesion = examples.get('skin-lesion');
if (lesion === undefined) throw new Error('no example');
const exam: Exam = lesion;
const shorter = withOnly(exam, exam.statements.slice(0, -6), new Set(['consents', 'conditions']));

function transactionOf(of: Exam, previous?: AnyBundle): AnyBundle {
  return toBundleOrThrow(of, {
    ...clinic,
    bundleType: 'transaction',
    ...(previous && { previous }),
  });
}

const bundle = transactionOf(exam);
let open: FakeServer[] = [];

afterEach(async () => {
  await Promise.all(open.map((one) => one.stop()));
  open = [];
});

async function serve(
  twist?: Twist,
): Promise<{ fake: FakeServer; server: FhirServer; waits: number[] }> {
  const fake = await startFake(twist);
  open.push(fake);
  const waits: number[] = [];
  const sleep = (milliseconds: number): Promise<void> => {
    waits.push(milliseconds);
    return Promise.resolve();
  };
  return { fake, server: { base: fake.url, sleep, timeout: 5_000 }, waits };
}

async function sent(server: FhirServer, options: DeliverOptions = {}, of = bundle) {
  const { value, issues } = await deliver(of, server, options);
  expect(issues).toEqual([]);
  if (value === undefined) throw new Error('no outcome');
  return value;
}

/** What is stored, without versions and times. */
function contentOf({ stored }: FakeServer): string[] {
  return [...stored]
    .map(([name, { resource }]) => {
      const { meta: _, ...content } = resource;
      return `${name} ${toJson(content)}`;
    })
    .sort();
}

/** Bends the answers to transactions, the first of them alone or from the `from`th on. */
function atPost(bend: (answer: FakeAnswer, count: number) => unknown): Twist {
  let count = 0;
  return ({ method, path }, answer) => {
    if (method !== 'POST' || path !== '') return undefined;
    count += 1;
    return bend(answer, count);
  };
}

describe('a delivery', () => {
  it.each([undefined, 50, 25])(
    'stores everything and tells where, at most %s entries',
    async (most) => {
      const { fake, server } = await serve();
      const { result, state } = await sent(server, most === undefined ? {} : { most });
      expect(result).toBe('stored');
      expect(Object.keys(state.places)).toHaveLength(bundle.entry?.length ?? 0);
      expect(new Set(Object.values(state.places))).toEqual(new Set(fake.stored.keys()));
    },
  );

  it('as batches needs no ids of ours: the answers tell them', async () => {
    const { fake, server } = await serve();
    const conditional = toBundleOrThrow(exam, {
      ...clinic,
      bundleType: 'transaction',
      transaction: 'conditional',
    });
    const { result } = await sent(server, { most: 50, as: 'batch' }, conditional);
    expect(result).toBe('stored');
    const text = contentOf(fake).join('\n');
    expect(text).not.toContain('"reference":"urn:uuid:');
    expect(text).not.toMatch(/"reference":"[A-Za-z]+\?/);
  });

  it('goes on where it stopped, and ends as one that never stopped', async () => {
    const steady = await serve();
    await sent(steady.server, { most: 25 });
    for (const lost of [1, 3, 5]) {
      // The bundle is stored, and the answer to it is lost.
      const { fake, server } = await serve((request, _, raw) => {
        const posts = fake?.requests.filter(({ method }) => method === 'POST').length;
        if (request.method !== 'POST' || posts !== lost) return undefined;
        raw.destroy();
        return true;
      });
      let kept: DeliveryState | undefined;
      const onProgress = (state: DeliveryState): void => {
        kept = structuredClone(state);
      };
      expect((await sent(server, { most: 25, onProgress })).result).toBe('unknown');
      expect(kept?.sent ?? 0).toBe(lost - 1);
      expect((await sent(server, { most: 25, state: kept })).result).toBe('stored');
      expect(contentOf(fake)).toEqual(contentOf(steady.fake));
    }
  });
});

describe('a server that', () => {
  const seconds = { 'retry-after': '7' };
  const date = {
    date: 'Wed, 05 Nov 2031 10:00:00 GMT',
    'retry-after': 'Wed, 05 Nov 2031 10:00:09 GMT',
  };

  it.each([
    ['asks to wait by seconds', 429, seconds, 7000],
    ['asks to wait until a date, by its own clock', 503, date, 9000],
    ['asks for nothing', 500, {}, 500],
  ] as const)('%s is asked again after that', async (_, status, headers, wait) => {
    const { server, waits } = await serve(
      atPost((answer, count) => {
        if (count === 1) Object.assign(answer, { status, headers, body: '' });
      }),
    );
    expect((await sent(server)).result).toBe('stored');
    expect(waits).toEqual([wait]);
  });

  const refused: readonly (readonly [string, Partial<FakeAnswer>, string])[] = [
    ['refuses the content', { status: 422 }, 'refused'],
    ['finds it too large', { status: 413 }, 'refused'],
    ['redirects', { status: 307, headers: { location: 'http://127.0.0.1:9/' } }, 'unknown'],
    ['has another at work on it', { status: 409 }, 'busy'],
    ['asks for more than an hour', { status: 429, headers: { 'retry-after': '4000' } }, 'busy'],
    ['is behind a gateway that gave up', { status: 504 }, 'unknown'],
    ['will do it later', { status: 202, body: '' }, 'unknown'],
    ['answers with a page', { body: '<html><p>Welcome</p></html>' }, 'unknown'],
    ['answers with nothing', { body: '' }, 'unknown'],
    [
      'answers 200 with an error',
      {
        body: '{"resourceType":"OperationOutcome","issue":[{"severity":"error","code":"exception"}]}',
      },
      'unknown',
    ],
    [
      'answers with half of the entries',
      { body: '{"resourceType":"Bundle","type":"transaction-response","entry":[]}' },
      'unknown',
    ],
    ['answers with what is not JSON', { body: '{"resourceType":"Bun' }, 'unknown'],
    ['has another version', { status: 412 }, 'conflict'],
  ];
  it.each(refused)('%s', async (_, bent, result) => {
    const { server } = await serve(
      atPost((answer) => {
        Object.assign(answer, bent);
      }),
    );
    const delivery = await sent(server);
    expect(delivery.result).toBe(result);
    expect(delivery.state.sent).toBe(0);
  });

  it('cannot be reached is told as unknown', async () => {
    const { fake, server } = await serve();
    await fake.stop();
    open = [];
    expect((await sent(server)).result).toBe('unknown');
  });

  it('accepts half of a batch is told, keeps what it has, and is sent the rest', async () => {
    let half = true;
    const { fake, server } = await serve(
      atPost((answer) => {
        if (!half) return;
        const response = JSON.parse(answer.body);
        response.entry[1] = { response: { status: '503 Service Unavailable' } };
        answer.body = JSON.stringify(response);
      }),
    );
    const first = await sent(server, { most: 50, as: 'batch' });
    expect(first).toMatchObject({ result: 'busy', status: 503 });
    expect(Object.keys(first.state.places).length).toBeGreaterThan(0);
    half = false;
    expect((await sent(server, { most: 50, as: 'batch', state: first.state })).result).toBe(
      'stored',
    );
    expect([...fake.stored.keys()].filter((name) => name.startsWith('Patient/'))).toHaveLength(1);
  });

  it('gives other ids than those asked for is followed', async () => {
    const { fake, server } = await serve(
      atPost((answer) => {
        answer.body = answer.body.replaceAll('"location":"Patient/', '"location":"Patient/x');
      }),
    );
    const { state, result } = await sent(server, { most: 25 });
    expect(result).toBe('stored');
    expect(Object.values(state.places).some((place) => place.startsWith('Patient/x'))).toBe(true);
    const posts = fake.requests.filter(({ method }) => method === 'POST');
    expect(posts.at(-1)?.body).toContain('"reference":"Patient/x');
  });
});

describe('an older version of an exam', () => {
  it('never lands over a newer one, whole or cut', async () => {
    for (const most of sampled([25], [undefined, 25])) {
      const options = most === undefined ? {} : { most };
      const { fake, server } = await serve();
      const first = await sent(server, options);
      const newer = transactionOf(shorter, bundle);
      const second = await sent(server, { ...options, state: first.state }, newer);
      expect(second.result).toBe('stored');
      const after = contentOf(fake);
      // What was sent before it comes once more, late: it names the versions that it followed.
      const late = { ...exam, recorded: '2026-01-05T12:00:00+02:00' };
      const again = await sent(server, { ...options, state: first.state }, transactionOf(late));
      expect(again.result).toBe('conflict');
      expect(contentOf(fake)).toEqual(after);
      const versions = await heldVersions(newer, server, options);
      // The state also knows those that the newer version no longer writes.
      expect(second.state.versions).toMatchObject(versions ?? { none: '' });
      const state = { ...second.state, versions: versions ?? {} };
      expect((await sent(server, { ...options, state }, transactionOf(late, newer))).result).toBe(
        'stored',
      );
    }
  });
});

describe('a token', () => {
  it('is asked for anew where the server refuses it, and a missing one sends nothing', async () => {
    const { fake, server } = await serve((request, answer) => {
      if (request.headers['authorization'] === 'Bearer fresh') return undefined;
      return Object.assign(answer, { status: 401, body: '' }) && undefined;
    });
    const asked: boolean[] = [];
    const token = (renew: boolean): string => {
      asked.push(renew);
      return renew ? 'fresh' : 'stale';
    };
    expect((await sent({ ...server, token })).result).toBe('stored');
    expect(asked).toEqual([false, true]);
    const before = fake.requests.length;
    const none = (): never => {
      throw new TypeError('no token');
    };
    expect(await sent({ ...server, token: none })).toMatchObject({ result: 'busy', status: 401 });
    expect(fake.requests).toHaveLength(before);
  });
});

describe('what a server declares', () => {
  it('is read, and tells what to set', async () => {
    const { server } = await serve();
    const capabilities = await readCapabilities(server);
    expect(capabilities).toMatchObject({ fhirVersion: 'R4', json: true, transaction: true });
    if (capabilities === undefined) throw new Error('nothing was declared');
    expect(settingsFor(capabilities)).toEqual({
      export: { fhirVersion: 'R4', transaction: 'put' },
      deliver: { as: 'transaction' },
    });
    const other = { ...capabilities, clientIds: false, transaction: false, batch: true };
    expect(settingsFor(other)).toEqual({
      export: { fhirVersion: 'R4', transaction: 'conditional' },
      deliver: { as: 'batch' },
    });
  });

  it('is undefined where it is a page or nothing', async () => {
    const { server } = await serve((_, answer) => {
      answer.body = '<html></html>';
    });
    expect(await readCapabilities(server)).toBeUndefined();
  });
});
