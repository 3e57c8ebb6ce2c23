import { connect, type Socket } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { examsToSend } from './exams.ts';
import { type FhirServer, startFhirServer } from './fhir-server.ts';
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

/** A clock that a signal sets back or on by a day: what Date tells, as programs see it. */
function movedClock(days: number): Record<string, string> {
  const program = `const now = Date.now; process.on('SIGUSR2', () => { Date.now = () => now() + ${days * 86_400_000}; });`;
  return { NODE_OPTIONS: `--import data:text/javascript,${encodeURIComponent(program)}` };
}

describe('a clock', () => {
  it.each([
    ['set back by a day', -1],
    ['set on by a day', 1],
  ])('%s while an exam waits holds up neither that one nor the next', async (_name, days) => {
    const fhir = await fhirServer();
    const { url, signal } = await service({ FHIR_URL: fhir.url, ...movedClock(days) });
    const [one, other] = examsToSend(1, 2);
    if (one === undefined || other === undefined) throw new TypeError('no exams');
    await fhir.kill();
    expect(await post(url, one.text)).toBe(201);
    expect((await countsOf(url)).waiting).toBe(1);
    signal('SIGUSR2');
    expect(await post(url, other.text)).toBe(201);
    await fhir.restart();
    expect(await drained(url)).toEqual({ stored: 2, waiting: 0, refused: 0 });
    for (const name of [...one.resources, ...other.resources]) {
      expect(fhir.resources.has(name), name).toBe(true);
    }
  });
});

describe('10,000 connections that say nothing', () => {
  it('are taken up to a bound, take little memory, and are let go', async () => {
    const bound = 200;
    const { url, resident } = await service({
      MAX_CONNECTIONS: String(bound),
      REQUEST_TIMEOUT_MS: '4000',
    });
    const [one] = examsToSend(1, 1);
    if (one === undefined) throw new TypeError('no exam');
    const before = resident();
    const open = new Set<Socket>();
    let most = 0;
    for (let batch = 0; batch < 100; batch += 1) {
      await Promise.all(Array.from({ length: 100 }, () => opened(url, open)));
      most = Math.max(most, open.size);
    }
    expect(resident() - before).toBeLessThan(100_000_000);
    // Whoever came too late is closed at once, and some of that is still on its way here.
    while (open.size > bound) await new Promise((resolve) => setTimeout(resolve, 20));
    expect(most).toBeGreaterThanOrEqual(bound);
    let status: number | undefined;
    while (status !== 201) status = await post(url, one.text);
    while (open.size > 0) await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await countsOf(url)).toEqual({ stored: 1, waiting: 1, refused: 0 });
  });
});

/** Resolves when the connection stands, or was refused; in `open` for as long as it stands. */
function opened(url: string, open: Set<Socket>): Promise<void> {
  return new Promise((resolve) => {
    const socket = connect({ port: Number(new URL(url).port), host: '127.0.0.1' });
    socket.on('connect', () => {
      open.add(socket);
      resolve();
    });
    socket.on('error', () => resolve());
    socket.on('close', () => open.delete(socket));
    socket.resume();
  });
}
