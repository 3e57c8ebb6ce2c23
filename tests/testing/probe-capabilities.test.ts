import { describe, expect, it } from 'vitest';
import { probeServer } from '../../src/testing/probe/probe-server.ts';
import type { ProbeReport } from '../../src/testing/probe/report/report.ts';
import { probeText } from '../../src/testing/probe/report/report-text.ts';
import { sampled } from '../sampled.ts';
import type { FakeServer, Twist } from './fake-server.ts';
import { errors, fake, noWait, probed } from './probed.ts';

type Kept = FakeServer['stored'] extends Map<string, infer One> ? One : never;

function row({ capabilities }: ProbeReport, id: string): string {
  const { found = '', set } = capabilities.find((one) => one.id === id) ?? {};
  return set === undefined ? found : `${found} -> ${set}`;
}

/** Entries of the transaction that a request is. */
function entriesIn(body: string): number {
  return body.includes('"transaction"') ? (JSON.parse(body).entry?.length ?? 0) : 0;
}

/** A server that takes at most so many entries. */
function limited(most: number): Twist {
  return ({ method, body }, answer) => {
    if (method === 'POST' && entriesIn(body) > most) {
      Object.assign(answer, { status: 413, body: '' });
    }
  };
}

/** The limit, and what a probe of 560 entries says of it. */
const limits = (
  [
    [50, '50, not 160 -> most: 50'],
    [160, '160, not 500 -> most: 160'],
  ] as const
).slice(0, sampled(1, 2));

describe('the capabilities that a probe finds', () => {
  it('are those of a server that does everything right, with what to set', async () => {
    const report = await probed(() => {}, { entries: 60, clean: true }, { lax: true });
    expect(report.capabilities.map(({ id }) => `${id}: ${row(report, id)}`)).toEqual([
      "version: 4.0.1 -> fhirVersion: 'R4'",
      'formats: application/fhir+json',
      "ids: the client may -> transaction: 'put'",
      expect.stringMatching(/^size: \d\d, and perhaps more$/),
      'precision: yes',
      "conditional-create: yes -> masterData: 'match'",
      'overwriting: no',
      'validate: no',
      'search-by-site: yes',
    ]);
    expect({ works: report.works, passed: report.passed }).toEqual({ works: true, passed: true });
    expect(probeText(report)).toContain("transaction: 'put'");
  });

  it('name the ids that the server gives', async () => {
    const report = await probed(() => {}, {}, { serverIds: true, lax: true });
    expect(row(report, 'ids')).toBe("the server -> transaction: 'conditional'");
  });

  it.each(limits)('name the limit of a server that takes %i entries', async (most, found) => {
    const report = await probed(limited(most), { entries: sampled(200, 560) }, { lax: true });
    expect(row(report, 'size')).toBe(found);
    // A limit is no fault.
    expect(report.passed).toBe(true);
  });

  it('name a server that loses digits, and one that can be asked for a verdict', async () => {
    const report = await probed(
      ({ method, path }, answer) => {
        answer.body = answer.body.replaceAll('"value":4.0', '"value":4');
        if (method === 'POST' && path.endsWith('$validate')) {
          answer.status = 200;
          answer.body = '{"resourceType":"OperationOutcome","issue":[]}';
        }
      },
      {},
      { lax: true },
    );
    expect([row(report, 'precision'), row(report, 'validate')]).toEqual(['no', 'yes']);
    expect(report.works).toBe(false);
  });

  /** A server that does something of its own at the second request to match. */
  async function atSecondMatch(act: (name: string, kept: Kept) => [string, Kept]) {
    let count = 0;
    const server = await fake(
      ({ method, body }, answer) => {
        if (method !== 'POST' || !body.includes('ifNoneExist')) return;
        count += 1;
        const name = /"(Patient\/[^"/]+)/.exec(answer.body)?.[1] ?? '';
        const kept = server.stored.get(name);
        if (count !== 2 || kept === undefined) return;
        const [other, changed] = act(name, kept);
        server.stored.set(other, changed);
        answer.body = answer.body.replace(name, other);
      },
      { lax: true },
    );
    return probeServer(server.url, { ...noWait, faults: [] });
  }

  it('name a server that makes a second patient where it was to match', async () => {
    const report = await atSecondMatch((_, kept) => [
      'Patient/copy',
      { ...kept, resource: { ...kept.resource, id: 'copy' } },
    ]);
    expect(row(report, 'conditional-create')).toBe("no -> masterData: 'reference'");
    expect(errors(report, 'matching')).toEqual(['duplicated']);
    expect(report.works).toBe(true);
  });

  it('name a server that writes over the patient whom it matched', async () => {
    const report = await atSecondMatch((name, kept) => {
      const { name: _, ...resource } = kept.resource;
      return [name, { ...kept, resource }];
    });
    expect(row(report, 'overwriting')).toBe("yes -> masterData: 'reference'");
    expect(errors(report, 'matching')).toEqual(['changed-content']);
  });

  it('name a server that does not match at all: that is none of its faults', async () => {
    const report = await probed(
      ({ method, body }, answer) => {
        if (method === 'POST' && body.includes('ifNoneExist')) {
          Object.assign(answer, { status: 400, body: '' });
        }
      },
      {},
      { lax: true },
    );
    expect(row(report, 'conditional-create')).toBe("no -> masterData: 'reference'");
    expect(report.passed).toBe(true);
  });
});

describe('what works and what conforms', () => {
  it('are told apart: a wrong content type has not failed to store', async () => {
    const report = await probed(
      (_, answer) => {
        answer.headers['content-type'] = 'text/plain';
      },
      {},
      { lax: true },
    );
    expect(report.steps.filter(({ verdict }) => verdict === 'failed')).toEqual([]);
    expect({ works: report.works, passed: report.passed }).toEqual({ works: true, passed: false });
    expect(probeText(report)).toContain('gives them back: yes; conforms in all that was tried: NO');
  });

  it('a server that stores nothing does not work, whatever it says', async () => {
    const report = await probed(({ method }, answer) => {
      if (method === 'POST') answer.status = 500;
    });
    expect({ works: report.works, passed: report.passed }).toEqual({ works: false, passed: false });
  });
});
