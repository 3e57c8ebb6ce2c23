import { afterEach } from 'vitest';
import type { ProbeOptions } from '../../src/testing/probe/options.ts';
import { probeServer } from '../../src/testing/probe/probe-server.ts';
import type { ProbeReport } from '../../src/testing/probe/report/report.ts';
import { type FakeOptions, type FakeServer, startFake, type Twist } from './fake-server.ts';

let servers: FakeServer[] = [];

afterEach(async () => {
  for (const server of servers) await server.stop();
  servers = [];
});

export async function fake(twist?: Twist, options?: FakeOptions): Promise<FakeServer> {
  const server = await startFake(twist, options);
  servers.push(server);
  return server;
}

/** No time passes between one try and the next, and no large exam is sent. */
export const noWait: Pick<ProbeOptions, 'sleep' | 'entries'> = {
  sleep: async () => {},
  entries: 0,
};

export async function probed(
  twist: Twist,
  options: ProbeOptions = {},
  server: FakeOptions = {},
): Promise<ProbeReport> {
  const { url } = await fake(twist, server);
  return probeServer(url, { ...noWait, faults: [], ...options });
}

/** Names of what a step found against FHIR, harmful or not. */
export function errors(report: ProbeReport, step: string): string[] {
  const found = report.steps.find(({ id }) => id === step);
  const notes = (found?.notes ?? []).filter(({ severity }) => severity !== 'information');
  return [...new Set(notes.map(({ misbehaviour }) => misbehaviour))];
}

export function notes(report: ProbeReport, step: string): string[] {
  const found = report.steps.find(({ id }) => id === step);
  return (found?.notes ?? []).map(({ misbehaviour }) => misbehaviour);
}
