import { connect, type Socket } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { type Exam, toJson } from '../../src/index.ts';
import { withOnly } from '../../src/testing/without.ts';
import { examsToSend, toSend } from './exams.ts';
import { type Behaviour, type FhirServer, startFhirServer } from './fhir-server.ts';
import { countsOf, drained, freshDatabase, post, type Service, startService } from './service.ts';

const running: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of running.splice(0)) await stop();
});

async function fhirServer(): Promise<FhirServer> {
  const server = await startFhirServer();
  running.push(() => server.kill());
  return server;
}

async function service(settings: Readonly<Record<string, string>>): Promise<Service> {
  const started = await startService({ DATABASE: freshDatabase(), ...settings });
  running.push(() => started.kill());
  return started;
}

/** All that the server sends until it closes; the socket's own end is left to the test. */
function opened(url: string): { socket: Socket; answer: Promise<string> } {
  const socket = connect({
    port: Number(new URL(url).port),
    host: '127.0.0.1',
    allowHalfOpen: true,
  });
  const answer = new Promise<string>((resolve) => {
    let text = '';
    socket.on('data', (chunk) => {
      text += chunk;
    });
    socket.on('error', () => resolve(text));
    socket.on('end', () => resolve(text));
  });
  return { socket, answer };
}

function request(body: string, part: number): string {
  const length = Buffer.byteLength(body);
  const head = `POST /exams HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-type: application/json\r\ncontent-length: ${length}\r\n\r\n`;
  return head + body.slice(0, Math.floor(body.length * part));
}

/** One exam in two further versions, and what its report says in each. */
function versions(): { texts: string[]; report: string; resources: readonly string[] } {
  const [one] = examsToSend(1, 1);
  if (one === undefined) throw new TypeError('no exam');
  const sent = ['First words', 'Second words', 'Third words'].map((text) =>
    toSend({ ...one.exam, conclusion: { text, concern: 'none' } }),
  );
  const resources = sent[0]?.resources ?? [];
  const report = resources.find((name) => name.startsWith('DiagnosticReport/'));
  return { texts: sent.map(({ text }) => text), report: report ?? '', resources };
}

async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await new Promise((resolve) => setTimeout(resolve, 10));
}

describe('what comes in', () => {
  it('is checked, stored once, updated when it changed, and can be had back', async () => {
    const fhir = await fhirServer();
    const { url, output } = await service({ FHIR_URL: fhir.url });
    const [one] = examsToSend(1, 1);
    if (one === undefined) throw new TypeError('no exam');
    expect(await post(url, one.text)).toBe(201);
    expect(await post(url, one.text)).toBe(200);
    const { conclusion: _none, ...shorter } = one.exam;
    const changed = { ...shorter, conclusion: { text: 'Other words', concern: 'none' as const } };
    expect(await post(url, toJson(changed))).toBe(200);
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
    const report = toSend(changed).resources.find((name) => name.startsWith('DiagnosticReport/'));
    expect(fhir.resources.get(report ?? '')?.text).toContain('Other words');
    const kept = await fetch(`${url}/exams/${encodeURIComponent(one.exam.id)}`);
    expect(await kept.json()).toMatchObject({ resourceType: 'Bundle', type: 'transaction' });
    expect(output().split('\n').filter(Boolean)).toHaveLength(1);
  });

  it('takes back what a later version no longer holds, however many came in between', async () => {
    const fhir = await fhirServer();
    const { url } = await service({ FHIR_URL: fhir.url });
    const [one] = examsToSend(1, 1);
    if (one === undefined) throw new TypeError('no exam');
    const shorter = (count: number): Exam =>
      withOnly(one.exam, one.exam.statements.slice(0, count), new Set());
    expect(await post(url, one.text)).toBe(201);
    await drained(url);
    // The FHIR server is away while two shorter versions come in; it gets only the last.
    await fhir.kill();
    expect(await post(url, toJson(shorter(4)))).toBe(200);
    expect(await post(url, toJson(shorter(2)))).toBe(200);
    await fhir.restart();
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
    const held = new Set(toSend(shorter(2)).resources);
    const gone = one.resources.filter((name) => name.startsWith('Observation/') && !held.has(name));
    expect(gone.length).toBeGreaterThan(3);
    for (const name of gone) {
      expect(fhir.resources.get(name)?.text, name).toContain('"status":"entered-in-error"');
    }
    expect(await post(url, toJson(shorter(2)))).toBe(200);
    expect((await countsOf(url)).waiting).toBe(0);
  });

  it('is refused with a reason where it is not an exam', async () => {
    const { url } = await service({});
    expect(await post(url, '{}')).toBe(422);
    expect(await post(url, '{"a":1')).toBe(422);
    expect(await post(url, ' '.repeat(5_000_001))).toBe(413);
    const other = await fetch(`${url}/exams`, { method: 'POST', body: 'x' });
    expect(other.status).toBe(415);
    const latin = await fetch(`${url}/exams`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: Buffer.from([0x22, 0xe9, 0x22]),
    });
    expect(latin.status).toBe(400);
    expect((await fetch(`${url}/exams/%E0%A4%A`)).status).toBe(404);
    expect((await countsOf(url)).stored).toBe(0);
  });
});

describe('a FHIR server', () => {
  const doubtful: readonly Behaviour[] = [
    'busy',
    'too-many',
    'race',
    'hang',
    'late',
    'half',
    'store-and-drop',
    'drop',
    'html',
    'outcome',
    'redirect',
    'junk',
  ];
  it.each(doubtful)('that answers "%s" twice gets each exam once', async (behaviour) => {
    const fhir = await fhirServer();
    let times = 0;
    fhir.behave(() => (times++ < 2 ? behaviour : 'answer'));
    const { url } = await service({ FHIR_URL: fhir.url, FHIR_TIMEOUT_MS: '300' });
    const exams = examsToSend(1, 2);
    for (const { text } of exams) expect(await post(url, text)).toBe(201);
    expect(await drained(url)).toEqual({ stored: 2, waiting: 0, refused: 0 });
    expect(fhir.received()).toBeGreaterThanOrEqual(4);
    for (const name of exams.flatMap(({ resources }) => resources)) {
      expect(fhir.resources.get(name)?.versions, name).toBe(1);
    }
  });

  it('that works off the first version late, after the second, ends with the second', async () => {
    const fhir = await fhirServer();
    fhir.behave((text) => (text.includes('First words') ? 'held' : 'answer'));
    const settings = { FHIR_TIMEOUT_MS: '300', FHIR_SETTLE_MS: '5000' };
    const { url } = await service({ FHIR_URL: fhir.url, ...settings });
    const { texts, report } = versions();
    const said = (): unknown[] =>
      fhir.history(report).map((text) => /(First|Second) words/.exec(text)?.[1]);
    expect(await post(url, texts[0] ?? '')).toBe(201);
    await until(() => fhir.received() > 0);
    expect(await post(url, texts[1] ?? '')).toBe(200);
    await until(() => said().includes('Second'));
    fhir.release();
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
    // The late one did come after the second, and did not stay.
    expect(said().slice(-3)).toEqual(['Second', 'First', 'Second']);
  });

  it('that works off a later version late refuses it, since it follows another one', async () => {
    const fhir = await fhirServer();
    const { url } = await service({ FHIR_URL: fhir.url, FHIR_TIMEOUT_MS: '300' });
    const { texts, report } = versions();
    expect(await post(url, texts[0] ?? '')).toBe(201);
    await drained(url);
    fhir.behave((text) => (text.includes('Second words') ? 'held' : 'answer'));
    expect(await post(url, texts[1] ?? '')).toBe(200);
    await until(() => fhir.received() > 1);
    expect(await post(url, texts[2] ?? '')).toBe(200);
    const said = (): unknown[] =>
      fhir.history(report).map((text) => /(First|Second|Third) words/.exec(text)?.[1]);
    await until(() => said().includes('Third'));
    fhir.release();
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
    expect(said()).toEqual(['First', 'Third']);
  });

  it('that names a date in Retry-After is left alone until then', async () => {
    const fhir = await fhirServer();
    const times: number[] = [];
    fhir.behave(() => (times.push(Date.now()) === 1 ? 'too-many-until' : 'answer'));
    const { url } = await service({ FHIR_URL: fhir.url, RETRY_LONGEST_MS: '60000' });
    const [one] = examsToSend(1, 1);
    expect(await post(url, one?.text ?? '')).toBe(201);
    await drained(url);
    const [first = 0, second = 0] = times;
    // The date has whole seconds, so that the wait that it names is shorter than the one meant.
    expect(Math.floor(second / 1000)).toBeGreaterThan(Math.floor(first / 1000));
  });

  it('that never takes an exam gets it a bounded number of times; it is kept and can be queued again', async () => {
    const fhir = await fhirServer();
    fhir.behave(() => 'busy');
    const { url, output } = await service({ FHIR_URL: fhir.url, RETRY_ATTEMPTS: '3' });
    const [one] = examsToSend(1, 1);
    if (one === undefined) throw new TypeError('no exam');
    expect(await post(url, one.text)).toBe(201);
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 1 });
    expect(fhir.received()).toBe(3);
    const kept = await (await fetch(`${url}/given-up`)).json();
    expect(kept).toEqual([{ exam: one.exam.id, status: 0, attempts: 2 }]);
    expect(output()).toContain('an exam was given up: tried too often');
    expect(output()).not.toContain(one.exam.id);
    fhir.behave(() => 'answer');
    const again = `${url}/given-up/${encodeURIComponent(one.exam.id)}`;
    expect((await fetch(again, { method: 'POST' })).status).toBe(202);
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
  });

  it('that refuses an exam does not hold up the others, and the exam is kept', async () => {
    const fhir = await fhirServer();
    let times = 0;
    fhir.behave(() => (times++ === 0 ? 'refuse' : 'answer'));
    const { url } = await service({ FHIR_URL: fhir.url });
    const exams = examsToSend(1, 3);
    for (const { text } of exams) expect(await post(url, text)).toBe(201);
    expect(await drained(url)).toEqual({ stored: 3, waiting: 0, refused: 1 });
  });
});

describe('a FHIR server with a limit', () => {
  it('gets an exam in bundles of its size, goes on after a kill, and takes newer content', async () => {
    const fhir = await fhirServer();
    const settings = {
      DATABASE: freshDatabase(),
      FHIR_URL: fhir.url,
      FHIR_TIMEOUT_MS: '300',
      FHIR_MOST_ENTRIES: '10',
    };
    const { texts, report, resources } = versions();
    let times = 0;
    fhir.behave(() => (++times > 2 ? 'hang' : 'answer'));
    const first = await service(settings);
    expect(await post(first.url, texts[0] ?? '')).toBe(201);
    await until(() => fhir.received() > 2);
    await first.kill();
    fhir.behave(() => 'answer');
    const sentBefore = fhir.received();
    const { url } = await service(settings);
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
    const bundles = Math.ceil(resources.length / 10);
    expect(fhir.received() - sentBefore).toBeLessThanOrEqual(bundles);
    for (const name of resources) expect(fhir.resources.get(name)?.versions, name).toBe(1);
    expect(await post(url, texts[1] ?? '')).toBe(200);
    expect(await drained(url)).toEqual({ stored: 1, waiting: 0, refused: 0 });
    expect(fhir.history(report)).toHaveLength(2);
  });
});

describe('a full disk', () => {
  it('gives 507, keeps what was acknowledged, and takes the rest once there is room', async () => {
    const fhir = await fhirServer();
    const settings = { DATABASE: freshDatabase(), FHIR_URL: fhir.url };
    const small = await service({ ...settings, MAX_DATABASE_PAGES: '200' });
    const exams = examsToSend(1, 24);
    const statuses: (number | undefined)[] = [];
    for (const { text } of exams) statuses.push(await post(small.url, text));
    const refused = exams.filter((_, at) => statuses[at] === 507);
    expect(new Set(statuses)).toEqual(new Set([201, 507]));
    const kept = exams.length - refused.length;
    expect(await drained(small.url)).toEqual({ stored: kept, waiting: 0, refused: 0 });
    await small.end();

    const large = await service(settings);
    for (const { text } of refused) expect(await post(large.url, text)).toBe(201);
    expect((await drained(large.url)).stored).toBe(exams.length);
    const lost = exams.flatMap(({ resources }) => resources).filter((n) => !fhir.resources.has(n));
    expect(lost).toEqual([]);
    expect([...fhir.resources.values()].filter(({ versions }) => versions !== 1)).toEqual([]);
  });
});

describe('slow and half-closed clients', () => {
  it('do not hold up others, and are let go after the time-out', async () => {
    const { url } = await service({ REQUEST_TIMEOUT_MS: '1500' });
    const [one, other] = examsToSend(1, 2);
    if (one === undefined || other === undefined) throw new TypeError('no exams');
    const slow = Array.from({ length: 40 }, (_, at) => {
      const { socket, answer } = opened(url);
      socket.write(at % 2 === 0 ? 'POST /exams HTTP/1.1\r\nhost:' : request(one.text, 0.5));
      return answer;
    });
    expect(await post(url, other.text)).toBe(201);
    const answers = await Promise.all(slow);
    expect(answers.filter((text) => !text.startsWith('HTTP/1.1 408') && text !== '')).toEqual([]);
    expect(await countsOf(url)).toEqual({ stored: 1, waiting: 1, refused: 0 });
  });

  it('get an answer where the exam came whole, and leave nothing where it came in half', async () => {
    const { url } = await service({});
    const [one, other] = examsToSend(1, 2);
    if (one === undefined || other === undefined) throw new TypeError('no exams');
    const whole = opened(url);
    whole.socket.end(request(one.text, 1));
    expect(await whole.answer).toMatch(/^HTTP\/1\.1 201 /);
    const half = opened(url);
    half.socket.end(request(other.text, 0.5));
    expect(await half.answer).not.toMatch(/^HTTP\/1\.1 2/);
    const gone = opened(url);
    gone.socket.write(request(other.text, 0.5), () => gone.socket.destroy());
    expect(await post(url, one.text)).toBe(200);
    expect((await countsOf(url)).stored).toBe(1);
  });
});

describe('who calls', () => {
  it('by a name that is not of this service gets nothing', async () => {
    const { url } = await service({ ALLOWED_HOSTS: 'exams.vineyard.example' });
    const [one] = examsToSend(1, 1);
    const called = async (host: string): Promise<string> => {
      const { socket, answer } = opened(url);
      socket.end(request(one?.text ?? '', 1).replace('host: localhost', `host: ${host}`));
      return (await answer).slice(0, 12);
    };
    expect(await called('other.example')).toBe('HTTP/1.1 421');
    expect(await called('exams.vineyard.example:8081')).toBe('HTTP/1.1 201');
  });

  it('needs the token where one is set, and none to ask whether it lives', async () => {
    const { url } = await service({ SERVICE_TOKEN: 'vine-1' });
    const status = async (path: string, token?: string): Promise<number> => {
      const headers = token === undefined ? {} : { authorization: `Bearer ${token}` };
      return (await fetch(url + path, { headers })).status;
    };
    expect(await status('/outbox')).toBe(401);
    expect(await status('/outbox', 'vine-2')).toBe(401);
    expect(await status('/outbox', 'vine-1')).toBe(200);
    expect(await status('/health')).toBe(200);
  });
});

describe('one large exam', () => {
  it('holds up nobody else', async () => {
    const { url } = await service({});
    // Unknown codes, each of which is compared with all that are known.
    const statements = Array.from({ length: 12_000 }, (_, at) => ({
      kind: 'finding',
      key: `k${at}`,
      finding: `${'x'.repeat(60)}${at}`,
      region: `${'y'.repeat(60)}${at}`,
      presence: 'present',
    }));
    const large = JSON.stringify({ ...examsToSend(1, 1)[0]?.exam, statements });
    let done = false;
    const heavy = post(url, large).finally(() => {
      done = true;
    });
    let answered = 0;
    while (!done) {
      await countsOf(url);
      answered += 1;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    expect(await heavy).toBe(422);
    expect(answered).toBeGreaterThan(10);
  });
});

describe('two processes', () => {
  it('do not share a database: the second does not start', async () => {
    const DATABASE = freshDatabase();
    const first = await service({ DATABASE });
    await expect(startService({ DATABASE })).rejects.toThrow(/did not start/);
    expect((await countsOf(first.url)).stored).toBe(0);
  });
});
