import { afterEach, describe, expect, it } from 'vitest';
import type { AnswerFault } from '../../../src/deliver/answer-faults.ts';
import { answerFaults, type DeliverOptions, type FhirServer } from '../../../src/deliver/index.ts';
import { bent, lies, once, placed, slow } from './lies.ts';
import { contentOf, entries, honest, sent, serve, stopServers } from './sent-exam.ts';

afterEach(stopServers);

const modes = [
  ['a transaction', {}],
  ['several transactions', { most: 8 }],
  ['batches', { most: 8, as: 'batch' }],
] as const;

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
