import { afterEach, describe, expect, it } from 'vitest';
import { examsToSend } from './exams.ts';
import type { Behaviour } from './fhir-server.ts';
import { fhirServer, service, stopAll, until, versions } from './running.ts';
import { drained, freshDatabase, post } from './service.ts';

afterEach(stopAll);
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
