import { describe, expect, it } from 'vitest';
import { toBundleOrThrow } from '../../src/index.ts';
import { applyFault } from '../../src/testing/faults/apply-fault.ts';
import { probeExams } from '../../src/testing/probe/probe-exams.ts';
import { probeServer } from '../../src/testing/probe/probe-server.ts';
import { sampledFaults } from '../../src/testing/probe/sampled-faults.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { isTransaction, ownWays, wrongAnswers } from './probe-twists.ts';
import { errors, fake, notes, noWait, probed } from './probed.ts';

/** Each of these is a whole probe: the quick suite takes every third. */
function part<T>(all: readonly T[]): readonly T[] {
  return all.filter((_, at) => at % sampled(5, 1) === 0);
}

describe('a server that does everything right', () => {
  it('passes every step, and nothing is left after cleaning', async () => {
    const server = await fake();
    const report = await probeServer(server.url, { ...noWait, clean: true });
    expect(report.steps.map(({ id, verdict }) => `${id} ${verdict}`)).toEqual(
      report.steps.map(({ id }) => `${id} ${id === 'size' ? 'skipped' : 'passed'}`),
    );
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

describe('what a server may do is told, and passes', () => {
  it.each(part(ownWays))('one %s', async (_, step, name, twist) => {
    const report = await probed(twist);
    expect(notes(report, step)).toContain(name);
    expect(errors(report, step)).toEqual([]);
  });

  it('one that adds content, which fails where the exam cannot hold it', async () => {
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
  it.each(part(wrongAnswers))('%s', async (_, step, name, twist) => {
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
    const report = await probeServer(server.url, { ...noWait, faults: sampledFaults, clean: true });
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
    const report = await probeServer(server.url, { ...noWait, faults: sampledFaults, clean: true });
    expect(errors(report, 'faults')).toEqual(['stored-in-part']);
    expect([...server.stored.values()].filter(({ deleted }) => !deleted)).toEqual([]);
  });

  it('records that cannot be deleted', async () => {
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

describe('the sample of faults', () => {
  it('can all be planted in the exam that is sent', () => {
    const { forFaults } = probeExams('1');
    const bundle = toBundleOrThrow(forFaults, { ...clinic, bundleType: 'transaction' });
    const missing = sampledFaults.filter((id) => applyFault(id, bundle, 1) === undefined);
    expect(missing).toEqual([]);
  });
});
