import { connect, type Socket } from 'node:net';
import { examsToSend, toSend } from './exams.ts';
import { type FhirServer, startFhirServer } from './fhir-server.ts';
import { freshDatabase, type Service, startService } from './service.ts';

const running: (() => Promise<void>)[] = [];

/** After each test. */
export async function stopAll(): Promise<void> {
  for (const stop of running.splice(0)) await stop();
}
export async function fhirServer(): Promise<FhirServer> {
  const server = await startFhirServer();
  running.push(() => server.kill());
  return server;
}

export async function service(settings: Readonly<Record<string, string>>): Promise<Service> {
  const started = await startService({ DATABASE: freshDatabase(), ...settings });
  running.push(() => started.kill());
  return started;
}

/** All that the server sends until it closes; the socket's own end is left to the test. */
export function opened(url: string): { socket: Socket; answer: Promise<string> } {
  const socket = connect({
    port: Number(new URL(url).port),
    host: '127.0.0.1',
    allowHalfOpen: true,
  });
  const answer = new Promise<string>((resolve) => {
    let text = '';
    socket.on('data', (chunk) => {
      text += chunk;
    });
    socket.on('error', () => resolve(text));
    socket.on('end', () => resolve(text));
  });
  return { socket, answer };
}

export function request(body: string, part: number): string {
  const length = Buffer.byteLength(body);
  const head = `POST /exams HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-type: application/json\r\ncontent-length: ${length}\r\n\r\n`;
  return head + body.slice(0, Math.floor(body.length * part));
}

/** One exam in two further versions, and what its report says in each. */
export function versions(): { texts: string[]; report: string; resources: readonly string[] } {
  const [one] = examsToSend(1, 1);
  if (one === undefined) throw new TypeError('no exam');
  const sent = ['First words', 'Second words', 'Third words'].map((text) =>
    toSend({ ...one.exam, conclusion: { text, concern: 'none' } }),
  );
  const resources = sent[0]?.resources ?? [];
  const report = resources.find((name) => name.startsWith('DiagnosticReport/'));
  return { texts: sent.map(({ text }) => text), report: report ?? '', resources };
}

export async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await new Promise((resolve) => setTimeout(resolve, 10));
}
