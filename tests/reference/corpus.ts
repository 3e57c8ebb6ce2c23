import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { build, ProgramError } from './java.ts';

export type FhirRelease = 'R4' | 'R4B' | 'R5';

/** One resource to validate. `text` keeps what a JavaScript object cannot: duplicates, `1.0`. */
export type CorpusInput = {
  readonly id: string;
  readonly version: FhirRelease;
  /** Canonical URLs of profiles that it must conform to besides those it claims. */
  readonly profiles?: readonly string[];
} & (
  | { readonly format?: 'json' | 'xml'; readonly text: string }
  | { readonly format?: 'json'; readonly resource: object }
);

export interface ReferenceIssue {
  readonly severity: 'fatal' | 'error' | 'warning' | 'information';
  /** As the validator writes it: `Bundle.entry[0].resource/*Patient/1*\/.gender`. */
  readonly location: string;
  readonly message: string;
  /** The validator's own name for the message, or the URL and key of an invariant; may be empty. */
  readonly messageId: string;
}

export interface ReferenceResult {
  readonly id: string;
  /** No issue of severity error or fatal. */
  readonly valid: boolean;
  readonly issues: readonly ReferenceIssue[];
}

export interface ValidatorOptions {
  /** Folders of definitions (JSON) to add for one version. */
  readonly load?: readonly { readonly version: FhirRelease; readonly folder: string }[];
  /**
   * Take a concept of several codings as bound when one is in the value set, as FHIR says. Default
   * false, which is stricter and how the kept verdicts were made.
   */
  readonly anyCoding?: boolean;
  /** Hold Observations to the profiles that their codes imply, as HL7's command line does. Default false. */
  readonly impliedProfiles?: boolean;
  /** Largest Java heap; three versions with the extensions pack fit in the default of 1500m. */
  readonly heap?: string;
}

export interface Validator {
  /** Of the running process. */
  readonly pid: number;
  /** The verdict on one resource; verdicts come in the order asked. */
  validate(input: CorpusInput): Promise<ReferenceResult>;
  /** Ends the process once what was asked is answered. */
  stop(): Promise<void>;
}

interface Waiting {
  resolve(result: ReferenceResult): void;
  reject(error: Error): void;
}

/**
 * One running validator process, built first where need be. Its start takes some ten seconds for
 * each FHIR version used, so one should serve a whole suite.
 * @throws ProgramError when it cannot be built; `validate` rejects with one when the process ends
 */
export async function startValidator(options: ValidatorOptions = {}): Promise<Validator> {
  const classPath = await build('validator');
  const loads = (options.load ?? []).flatMap(({ version, folder }) => [
    '--load',
    `${version}=${folder}`,
  ]);
  const java = [`-Xmx${options.heap ?? '1500m'}`, '-Dslf4j.internal.verbosity=ERROR'];
  if (options.anyCoding === true) java.push('-DanyCoding=true');
  if (options.impliedProfiles === true) java.push('-DimpliedProfiles=true');
  const child = spawn('java', [...java, '-cp', classPath, 'ValidateCorpus', ...loads]);
  const waiting: Waiting[] = [];
  const complaints = lastLines(child);
  const closed = once(child, 'close');

  createInterface({ input: child.stdout }).on('line', (line) => {
    // The shape is that of ValidateCorpus.java, which is this program's own.
    waiting.shift()?.resolve(JSON.parse(line) as ReferenceResult);
  });
  // A broken pipe is reported by `close`, with the reason.
  child.stdin.on('error', () => {});
  child.on('close', (code) => {
    const error = new ProgramError(`the validator ended with ${code}:\n${complaints()}`);
    for (const one of waiting.splice(0)) one.reject(error);
  });

  return {
    pid: child.pid ?? Number.NaN,
    validate(input) {
      return new Promise((resolve, reject) => {
        if (child.exitCode !== null || !child.stdin.writable) {
          return reject(new ProgramError(`the validator has ended:\n${complaints()}`));
        }
        waiting.push({ resolve, reject });
        child.stdin.write(`${JSON.stringify(input)}\n`);
      });
    },
    async stop() {
      child.stdin.end();
      await closed;
    },
  };
}

// Requests in flight: enough to keep the process busy, few enough to bound the memory.
const WINDOW = 16;

/**
 * Verdicts on a whole corpus, one process for all of it, in the order of the inputs.
 * @throws ProgramError when the validator cannot be built or ends early
 */
export async function* validateCorpus(
  inputs: Iterable<CorpusInput> | AsyncIterable<CorpusInput>,
  options: ValidatorOptions = {},
): AsyncGenerator<ReferenceResult> {
  const validator = await startValidator(options);
  const asked: Promise<ReferenceResult>[] = [];
  try {
    for await (const input of inputs) {
      const answer = validator.validate(input);
      // Awaited below; without this a rejection before that would end the Node process.
      answer.catch(() => {});
      asked.push(answer);
      const oldest = asked.length < WINDOW ? undefined : asked.shift();
      if (oldest !== undefined) yield await oldest;
    }
    for (const answer of asked) yield await answer;
  } finally {
    await validator.stop();
  }
}

/** The end of what the process writes to standard error, without stack frames. */
function lastLines(child: ChildProcessWithoutNullStreams): () => string {
  const kept: string[] = [];
  createInterface({ input: child.stderr }).on('line', (line) => {
    if (/^\s+(at |\.\.\. )/.test(line)) return;
    kept.push(line);
    if (kept.length > 20) kept.shift();
  });
  return () => kept.join('\n');
}
