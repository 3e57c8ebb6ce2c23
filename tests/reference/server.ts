import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { delimiter } from 'node:path';
import { createInterface } from 'node:readline';
import { build, ProgramError } from './java.ts';

export interface ServerOptions {
  /** Default R4. */
  readonly fhirVersion?: 'R4' | 'R5';
  /** 0, the default: any free port. */
  readonly port?: number;
  /** File that H2 keeps the data in; in memory where none is named. */
  readonly dataFile?: string;
  /** Refuse resources that have errors, with status 422. Default true. */
  readonly validate?: boolean;
  /** Folders of definitions (JSON, R4) that the server validates against besides its own. */
  readonly load?: readonly string[];
  /** A FHIR package (.tgz) that the server installs before it is ready. */
  readonly package?: string;
}

export interface FhirServer {
  /** FHIR base URL on the loopback address. */
  readonly url: string;
  stop(): Promise<void>;
}

/**
 * A running FHIR server with an embedded database. It is ready after 20 to 40 seconds, and its
 * first transaction takes some ten more.
 * @throws ProgramError when it cannot be built or ends before it is ready
 */
export async function startServer(options: ServerOptions = {}): Promise<FhirServer> {
  const classPath = await build('server');
  const database =
    options.dataFile === undefined
      ? 'jdbc:h2:mem:fhir;DB_CLOSE_DELAY=-1'
      : `jdbc:h2:file:${options.dataFile}`;
  const child = spawn('java', [
    '-Xmx1g',
    `-Dfhir=${options.fhirVersion ?? 'R4'}`,
    `-Dport=${options.port ?? 0}`,
    `-Ddb=${database}`,
    `-Dvalidate=${options.validate ?? true}`,
    `-Dload=${(options.load ?? []).join(delimiter)}`,
    `-Dpackage=${options.package ?? ''}`,
    ...['-cp', classPath, 'FhirServer'],
  ]);
  const closed = once(child, 'close');
  const said: string[] = [];
  createInterface({ input: child.stderr }).on('line', (line) => {
    if (!/^\s+(at |\.\.\. )/.test(line)) said.push(line);
    if (said.length > 20) said.shift();
  });
  const url = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stdout }).on('line', (line) => {
      const ready = /^READY (\S+)$/.exec(line)?.[1];
      if (ready !== undefined) resolve(ready);
    });
    child.on('close', (code) => {
      reject(new ProgramError(`the server ended with ${code}:\n${said.join('\n')}`));
    });
  });
  // Else whoever asks it sees connections end and not why.
  const tell = (code: number | null): void => {
    console.error(`the server ended with ${code}:\n${said.join('\n')}`);
  };
  child.on('close', tell);
  return {
    url,
    async stop() {
      child.off('close', tell);
      child.stdin.end();
      await closed;
    },
  };
}
