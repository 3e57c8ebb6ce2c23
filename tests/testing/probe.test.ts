import { afterEach, describe, expect, it } from 'vitest';
import { toBundleOrThrow } from '../../src/index.ts';
import { applyFault } from '../../src/testing/faults/apply-fault.ts';
import type { ProbeOptions } from '../../src/testing/probe/options.ts';
import { probeExams } from '../../src/testing/probe/probe-exams.ts';
import { probeServer } from '../../src/testing/probe/probe-server.ts';
import type { ProbeReport } from '../../src/testing/probe/report.ts';
import { sampledFaults } from '../../src/testing/probe/sampled-faults.ts';
import { type FakeOptions, type FakeServer, startFake, type Twist } from './fake-server.ts';

let servers: FakeServer[] = [];

afterEach(async () => {
  for (const server of servers) await server.stop();
  servers = [];
});

async function fake(twist?: Twist, options?: FakeOptions): Promise<FakeServer> {
  const server = await startFake(twist, options);
  servers.push(server);
  return server;
}

const noWait = { sleep: async () => {} };

async function probed(
  twist: Twist,
  options: ProbeOptions = {},
  server: FakeOptions = {},
): Promise<ProbeReport> {
  const { url } = await fake(twist, server);
  return probeServer(url, { ...noWait, faults: [], ...options });
}

/** Names of the misbehaviours of a step that make it fail. */
function errors(report: ProbeReport, step: string): string[] {
  const found = report.steps.find(({ id }) => id === step);
  const notes = (found?.notes ?? []).filter(({ severity }) => severity === 'error');
  return [...new Set(notes.map(({ misbehaviour }) => misbehaviour))];
}

function notes(report: ProbeReport, step: string): string[] {
  const found = report.steps.find(({ id }) => id === step);
  return (found?.notes ?? []).map(({ misbehaviour }) => misbehaviour);
}

const isTransaction = (body: string): boolean => body.includes('"transaction"');

describe('a server that does everything right', () => {
  it('passes every step, and nothing is left after cleaning', async () => {
    const server = await fake();
    const report = await probeServer(server.url, { ...noWait, clean: true });
    expect(report.steps.filter(({ verdict }) => verdict !== 'passed')).toEqual([]);
    expect(report.passed).toBe(true);
    expect(report.software).toBe('Harbour store 1');
    expect([...server.stored.values()].filter(({ deleted }) => !deleted)).toEqual([]);
    expect(server.stored.size).toBeGreaterThan(30);
    expect(new Set(report.changes.map(({ what }) => what))).toEqual(new Set(['reference', 'meta']));
    expect(report.faults.map(({ verdict }) => verdict)).toEqual(report.faults.map(() => 'refused'));
  });

  it('passes again, with the records of the first probe updated', async () => {
    const server = await fake();
    const first = await probeServer(server.url, { ...noWait, faults: [] });
    const { size } = server.stored;
    const second = await probeServer(server.url, { ...noWait, faults: [] });
    expect([first.passed, second.passed]).toEqual([true, true]);
    expect(server.stored.size).toBe(size);
    expect(first.steps.at(-1)?.reason).toContain(`${size} resources may be left`);
  });

  it('passes where the server gives the ids, found by identifier', async () => {
    const server = await fake(() => {}, { serverIds: true });
    const report = await probeServer(server.url, { ...noWait, clean: true });
    expect(report.steps.filter(({ verdict }) => verdict === 'failed')).toEqual([]);
    expect([...server.stored.keys()].filter((name) => name.includes('/server-'))).not.toEqual([]);
    expect([...server.stored.values()].filter(({ deleted }) => !deleted)).toEqual([]);
  });
});

/** What a server does wrong, the step that shows it, and the name in the report. */
const wrongAnswers: readonly (readonly [string, string, string, Twist])[] = [
  [
    'a page of HTML',
    'capability',
    'html-answer',
    (_, answer) => {
      answer.headers = { 'content-type': 'text/html' };
      answer.body = '<!DOCTYPE html><html><body>Sign in</body></html>';
    },
  ],
  [
    'success with an OperationOutcome that says error',
    'store',
    'success-with-error',
    ({ body }, answer) => {
      if (!isTransaction(body)) return;
      answer.status = 200;
      answer.body =
        '{"resourceType":"OperationOutcome","issue":[{"severity":"error","code":"invalid"}]}';
    },
  ],
  [
    'the content type of plain JSON',
    'read-back',
    'wrong-content-type',
    (_, answer) => {
      answer.headers['content-type'] = 'text/plain';
    },
  ],
  [
    'an endless redirect',
    'capability',
    'endless-redirect',
    ({ path }, answer) => {
      answer.status = 302;
      answer.headers['location'] = `/fhir/${path}`;
    },
  ],
  [
    'twelve million bytes of junk',
    'capability',
    'too-large',
    (_, answer) => {
      answer.body = '{'.repeat(12_000_000);
    },
  ],
  [
    'JSON that ends too early',
    'capability',
    'truncated-json',
    (_, answer) => {
      answer.body = answer.body.slice(0, 100);
    },
  ],
  [
    'no JSON',
    'capability',
    'not-json',
    (_, answer) => {
      answer.body = 'all well';
    },
  ],
  [
    'JSON nested without end',
    'capability',
    'not-json',
    (_, answer) => {
      answer.body = `${'['.repeat(500_000)}`;
    },
  ],
  [
    'nothing',
    'capability',
    'empty-answer',
    (_, answer) => {
      answer.body = '';
    },
  ],
  [
    'another resource',
    'capability',
    'wrong-resource',
    (_, answer) => {
      answer.body = '{"resourceType":"Patient"}';
    },
  ],
  [
    'another version of FHIR',
    'capability',
    'wrong-version',
    (_, answer) => {
      answer.body = answer.body.replace('4.0.1', '3.0.2');
    },
  ],
  [
    'a login page',
    'capability',
    'not-authorised',
    (_, answer) => {
      answer.status = 401;
    },
  ],
  [
    'a fault of its own',
    'store',
    'server-fault',
    ({ body }, answer) => {
      if (isTransaction(body)) answer.status = 500;
    },
  ],
  [
    'ids other than those asked for',
    'store',
    'changed-ids',
    ({ body }, answer) => {
      if (isTransaction(body)) answer.body = answer.body.replaceAll('Patient/', 'Patient/new-');
    },
  ],
  [
    'no extensions',
    'read-back',
    'dropped-extension',
    ({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = JSON.stringify(JSON.parse(answer.body), (property, value) =>
        property === 'extension' ? undefined : value,
      );
    },
  ],
  [
    'no places',
    'read-back',
    'dropped-content',
    ({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = JSON.stringify(JSON.parse(answer.body), (property, value) =>
        property === 'bodySite' ? undefined : value,
      );
    },
  ],
  [
    'a figure without its precision',
    'read-back',
    'changed-content',
    (_, answer) => {
      answer.body = answer.body.replaceAll('"value":4.0', '"value":4');
    },
  ],
  [
    'no notes',
    'read-back',
    'changed-exam',
    ({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = answer.body.replaceAll('Größe', 'Gr??e');
    },
  ],
  [
    'a reference to someone else',
    'read-back',
    'changed-reference',
    ({ method, path }, answer) => {
      if (method === 'GET' && path.startsWith('DiagnosticReport/')) {
        answer.body = answer.body.replace(/"Patient\/[^"]+"/, '"Patient/someone-else"');
      }
    },
  ],
  [
    'nothing found',
    'search',
    'not-found',
    ({ path }, answer) => {
      if (path.startsWith('Observation?')) {
        answer.body = '{"resourceType":"Bundle","type":"searchset","total":0}';
      }
    },
  ],
  [
    'everything, whatever is searched',
    'search',
    'found-too-much',
    ({ path }, answer) => {
      if (path.includes('date=2031-04-19')) {
        answer.body =
          '{"resourceType":"Bundle","type":"searchset","entry":[{"resource":{"resourceType":"DiagnosticReport","id":"x"}}]}';
      }
    },
  ],
  [
    'a next page on another host',
    'search',
    'redirect-to-other-host',
    ({ path }, answer) => {
      if (!path.includes('?')) return;
      answer.body =
        '{"resourceType":"Bundle","type":"searchset","link":[{"relation":"next","url":"http://192.0.2.1/fhir?page=2"}]}';
    },
  ],
  [
    'pages without end',
    'search',
    'found-too-much',
    ({ path, headers }, answer) => {
      if (!path.startsWith('Observation?')) return;
      const url = `http://${headers['host']}/fhir/Observation?more=1`;
      answer.body = `{"resourceType":"Bundle","type":"searchset","link":[{"relation":"next","url":"${url}"}]}`;
    },
  ],
  [
    'a version that never changes',
    'update',
    'same-version',
    ({ body }, answer) => {
      if (isTransaction(body)) answer.body = answer.body.replace(/_history\/\d+/g, '_history/1');
    },
  ],
];

/** What a server may do, the step that tells it, and the name in the report. */
const ownWays: readonly (readonly [string, string, string, Twist])[] = [
  [
    'that declares no search by code',
    'search',
    'not-declared',
    ({ path }, answer) => {
      if (path.startsWith('metadata'))
        answer.body = answer.body.replaceAll('"code","type"', '"x","type"');
    },
  ],
  [
    'that has one version and one format, whatever is asked for',
    'negotiation',
    'ignored-content-type',
    ({ path, headers }, answer) => {
      if (!path.startsWith('metadata') || answer.status !== 406) return;
      const accept = String(headers['accept']);
      if (!accept.includes('xml') && !path.includes('xml')) return;
      answer.status = 200;
      answer.headers = { 'content-type': 'application/fhir+json' };
      answer.body = '{"resourceType":"CapabilityStatement"}';
    },
  ],
  [
    'that makes a version of whatever is sent',
    're-send',
    'new-version',
    (() => {
      let sent = 0;
      return ({ body }, answer) => {
        if (!isTransaction(body)) return;
        sent += 1;
        answer.body = answer.body.replace(/_history\/\d+/g, `_history/${sent}`);
      };
    })(),
  ],
  [
    'that finds what it stored only when it is asked again',
    'search',
    'found-late',
    (() => {
      let asked = 0;
      return ({ path }, answer) => {
        if (!path.startsWith('DiagnosticReport?')) return;
        asked += 1;
        if (asked > 1) return;
        answer.body = '{"resourceType":"Bundle","type":"searchset","total":0}';
      };
    })(),
  ],
];

describe('what a server may do is told, and passes', () => {
  it.each(ownWays)('one %s', async (_, step, name, twist) => {
    const report = await probed(twist);
    expect(notes(report, step)).toContain(name);
    expect(errors(report, step)).toEqual([]);
  });

  it('one that adds content, which fails where the exam can not hold it', async () => {
    const report = await probed(({ method, path }, answer) => {
      if (method !== 'GET' || !path.startsWith('Observation/')) return;
      answer.body = answer.body.replace('"category":', '"specimen":{"display":"none"},"category":');
    });
    expect(notes(report, 'read-back')).toContain('added-content');
    expect(errors(report, 'read-back')).toEqual(['changed-exam']);
  });

  it('one that refuses faults without a word', async () => {
    const report = await probed(
      ({ method }, answer) => {
        if (method === 'POST' && answer.status === 422) answer.body = '';
      },
      { faults: sampledFaults },
    );
    expect(notes(report, 'faults')).toContain('fault-without-outcome');
    expect(errors(report, 'faults')).toEqual([]);
  });
});

describe('what a server does wrong is named', () => {
  it.each(wrongAnswers)('%s', async (_, step, name, twist) => {
    const report = await probed(twist);
    expect(report.passed).toBe(false);
    expect(errors(report, step)).toContain(name);
  });

  it('a second copy for what is sent again', async () => {
    let sent = 0;
    const report = await probed(({ body }, answer) => {
      if (!isTransaction(body)) return;
      sent += 1;
      answer.body = answer.body.replaceAll('Provenance/', `Provenance/copy-${sent}-`);
    });
    expect(errors(report, 'store')).toEqual(['changed-ids']);
    expect(errors(report, 're-send')).toContain('duplicated');
  });

  it('faults that are accepted are told, and deleted at once', async () => {
    const server = await fake(() => {}, { lax: true });
    const report = await probeServer(server.url, { ...noWait, clean: true });
    const accepted = report.faults.filter(({ verdict }) => verdict === 'accepted');
    expect(accepted.map(({ fault }) => fault)).toContain('no-observation-status');
    expect(notes(report, 'faults')).toContain('fault-accepted');
    expect([...server.stored.values()].filter(({ deleted }) => !deleted)).toEqual([]);
  });

  it('a refused transaction that was stored in part', async () => {
    const server = await fake(({ body }, answer) => {
      // The report of the faulty exam is kept although the whole is refused.
      const id = /DiagnosticReport\/([0-9a-f-]{36})/.exec(body)?.[1];
      if (answer.status === 422 && id !== undefined) {
        const resource = { resourceType: 'DiagnosticReport', id };
        server.stored.set(`DiagnosticReport/${id}`, { resource, version: 1, deleted: false });
      }
    });
    const report = await probeServer(server.url, { ...noWait, clean: true });
    expect(errors(report, 'faults')).toEqual(['stored-in-part']);
    expect([...server.stored.values()].filter(({ deleted }) => !deleted)).toEqual([]);
  });

  it('records that can not be deleted', async () => {
    const report = await probed(
      ({ method, path }, answer) => {
        if (method !== 'GET' || !path.startsWith('Patient/')) return;
        if (answer.status === 410) answer.status = 200;
      },
      { clean: true },
    );
    expect(errors(report, 'clean')).toEqual(['left-behind']);
  });

  it('records that are left since the server went away', async () => {
    const report = await probed(
      ({ body }, _, raw) => {
        if (!body.includes('"DELETE"')) return undefined;
        raw.destroy();
        return true;
      },
      { clean: true },
    );
    expect(errors(report, 'clean')).toEqual(['left-behind', 'cut-off-answer']);
  });
});

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

describe('the sample of faults', () => {
  it('can all be planted in the exam that is sent', () => {
    const { forFaults } = probeExams('1');
    const bundle = toBundleOrThrow(forFaults, { bundleType: 'transaction' });
    const missing = sampledFaults.filter((id) => applyFault(id, bundle, 1) === undefined);
    expect(missing).toEqual([]);
  });
});
