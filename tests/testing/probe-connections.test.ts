import { describe, expect, it } from 'vitest';
import { probeServer } from '../../src/testing/probe/probe-server.ts';
import { startFake, type Twist } from './fake-server.ts';
import { errors, fake, noWait, probed } from './probed.ts';

describe('connections that fail', () => {
  it('no server at all', async () => {
    const server = await startFake();
    await server.stop();
    const report = await probeServer(server.url, { ...noWait, faults: [] });
    expect(errors(report, 'capability')).toEqual(['no-connection']);
    expect(report.passed).toBe(false);
  });

  it.each([
    ['no answer', 'no-answer', () => true],
    [
      'an answer that comes byte by byte',
      'slow-answer',
      (_request, answer, raw) => {
        raw.writeHead(200, answer.headers);
        const drip = setInterval(() => raw.write(' '), 20);
        raw.on('close', () => clearInterval(drip));
        return true;
      },
    ],
    [
      'an answer that is closed halfway',
      'cut-off-answer',
      (_request, answer, raw) => {
        raw.writeHead(200, { ...answer.headers, 'content-length': '5000' });
        raw.write(answer.body.slice(0, 100), () => raw.destroy());
        return true;
      },
    ],
    [
      'a connection that is half closed before the answer',
      'cut-off-answer',
      (_request, _answer, raw) => {
        raw.socket?.end();
        return true;
      },
    ],
  ] satisfies readonly (readonly [string, string, Twist])[])('%s', async (_, name, twist) => {
    const server = await fake(twist);
    const report = await probeServer(server.url, { ...noWait, timeout: 400 });
    expect(errors(report, 'capability')).toEqual([name]);
    // A server that fails so is asked a few times and no more.
    expect(server.requests.length).toBeLessThanOrEqual(4);
    expect(report.passed).toBe(false);
  });

  it('ends when the time for the whole probe is over', async () => {
    const report = await probed(() => true, { totalTime: 100 });
    expect(errors(report, 'capability')).toEqual(['out-of-time']);
    expect(report.steps.filter(({ verdict }) => verdict === 'passed')).toEqual([]);
  });
});

describe('a server that asks to wait', () => {
  it('gets the time that it asks for', async () => {
    let asked = 0;
    const waits: number[] = [];
    const report = await probed(
      (_, answer) => {
        asked += 1;
        if (asked > 2) return;
        answer.status = asked === 1 ? 429 : 503;
        answer.headers['retry-after'] = asked === 1 ? '7' : 'Thu, 17 Apr 2031 10:00:09 GMT';
        answer.headers['date'] = 'Thu, 17 Apr 2031 10:00:00 GMT';
      },
      { sleep: async (milliseconds) => void waits.push(milliseconds) },
    );
    expect(waits).toEqual([7000, 9000]);
    expect(report.retries).toBe(2);
    expect(report.passed).toBe(true);
  });

  it('is asked again after longer and longer waits, and then no more', async () => {
    const waits: number[] = [];
    const report = await probed(
      (_, answer) => {
        answer.status = 503;
      },
      {
        sleep: async (milliseconds) => void waits.push(milliseconds),
      },
    );
    expect(waits.slice(0, 4)).toEqual([500, 1000, 2000, 4000]);
    expect(errors(report, 'capability')).toEqual(['busy']);
    expect(report.requests).toBe(15);
  });

  it('is not waited for all day', async () => {
    const waits: number[] = [];
    const report = await probed(
      (_, answer) => {
        answer.status = 429;
        answer.headers['retry-after'] = '86400';
      },
      { sleep: async (milliseconds) => void waits.push(milliseconds) },
    );
    expect(waits).toEqual([]);
    expect(errors(report, 'capability')).toEqual(['busy']);
  });
});
