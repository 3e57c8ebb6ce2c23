import { afterEach, describe, expect, it } from 'vitest';
import { type Exam, toJson } from '../../src/index.ts';
import { withOnly } from '../../src/testing/without.ts';
import { examsToSend, toSend } from './exams.ts';
import { fhirServer, opened, request, service, stopAll } from './running.ts';
import { countsOf, drained, post } from './service.ts';

afterEach(stopAll);
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
