import { afterEach, describe, expect, it } from 'vitest';
import type { DeliveryState } from '../../../src/deliver/index.ts';
import type { Twist } from '../../testing/fake-server.ts';
import { type Bent, bent } from './lies.ts';
import { contentOf, entries, honest, sent, serve, stopServers } from './sent-exam.ts';

afterEach(stopServers);

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
