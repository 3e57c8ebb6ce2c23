import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { published } from '../../src/generate/published.ts';
import { hasErrors, type Issue } from '../../src/issues/issue.ts';
import { snapshotOf } from '../../src/validate/profiles/snapshot.ts';
import { thoroughR4 } from '../../src/validate/thorough/thorough.ts';
import {
  compileProfiles,
  type Validation,
  validateBundle,
} from '../../src/validate/versions/r4.ts';
import { isObject, type JsonObject, objectsOf } from '../../src/validate/walk/json.ts';
import { type Difference, differences } from './profile-bed/differences.ts';
import { type Guide, guides, readGuide } from './profile-bed/guides.ts';
import { type Mutant, mutantsOf } from './profile-bed/mutations.ts';
import { keptVerdicts } from './profile-bed/verdicts.ts';

// Examples of published guides, each with one change against a constraint of its profile, beside the
// kept verdicts of HL7's validator (profile-bed/record.ts names the chain). What counts on both sides is
// what the change adds to what is said of the example.

function told({ code, path, rule, expected }: Issue): string {
  return JSON.stringify([code, path, rule, expected]);
}

function nameOf(error: string): string {
  return (error.split(' @ ')[0] ?? '').replace(/^http.*\//, '');
}

interface Counts {
  mutants: number;
  agreed: number;
  acceptedByUsAlone: number;
  refusedByUsAlone: number;
  readonly surprises: string[];
  readonly byDifference: Map<Difference, number>;
}

function judge(
  mutant: Mutant,
  validation: Validation,
  before: ReadonlySet<string>,
  theirs: readonly string[],
  counts: Counts,
): void {
  const ours = validation.issues.filter(
    (each) => each.severity === 'error' && !before.has(told(each)),
  );
  counts.mutants += 1;
  if (ours.length > 0 === theirs.length > 0) {
    counts.agreed += 1;
    return;
  }
  const we = ours.length > 0 ? 'refused' : 'accepted';
  counts[we === 'refused' ? 'refusedByUsAlone' : 'acceptedByUsAlone'] += 1;
  const otherType = validation.issues.some(({ code }) => code === 'unchecked-resource');
  const [said = ''] =
    we === 'refused'
      ? ours.map(({ code, facts }) => `${code} ${facts.reason}`)
      : theirs.map(nameOf);
  const row = differences.find(
    (each) =>
      each.we === we &&
      each.says.test(said) &&
      (each.otherType !== true || otherType) &&
      (each.unchecked !== true || validation.unchecked.length > 0),
  );
  if (row === undefined)
    counts.surprises.push(`${we} ${mutant.kind} ${mutant.rule} ${mutant.file}: ${said}`);
  else counts.byDifference.set(row, (counts.byDifference.get(row) ?? 0) + 1);
}

const levels = [
  ['fast', {}],
  ['thorough', { level: 'thorough', engine: thoroughR4 }],
] as const;

async function judged(guide: Guide, options: (typeof levels)[number][1]): Promise<Counts> {
  const files = await readGuide(guide);
  const profiles = compileProfiles(files.definitions);
  const kept = keptVerdicts(guide);
  const validated = (resource: JsonObject) => validateBundle(resource, { profiles, ...options });
  const before = new Map(
    files.examples.map(({ file, resource }) => [
      file,
      new Set(validated(resource).issues.map(told)),
    ]),
  );
  const counts: Counts = {
    mutants: 0,
    agreed: 0,
    acceptedByUsAlone: 0,
    refusedByUsAlone: 0,
    surprises: [],
    byDifference: new Map(),
  };
  for (const mutant of mutantsOf(files)) {
    const verdict = kept.get(mutant.digest);
    if (verdict === undefined) {
      counts.surprises.push(`no kept verdict: ${mutant.kind} ${mutant.rule} ${mutant.file}`);
      continue;
    }
    judge(
      mutant,
      validated(mutant.resource),
      before.get(mutant.file) ?? new Set(),
      verdict.errors,
      counts,
    );
  }
  return counts;
}

for (const [level, options] of levels) {
  test.each(guides)(`broken examples of $name at the ${level} level`, async (guide) => {
    const { surprises, byDifference, ...counts } = await judged(guide, options);
    console.info(guide.name, level, JSON.stringify(counts));
    for (const [{ we, says, right }, count] of byDifference) {
      console.info(`  ${we} by us alone: ${count}, ${says.source.slice(0, 60)}, right: ${right}`);
    }
    expect(surprises).toEqual([]);
    expect(counts.mutants).toBeGreaterThan(100);
  });
}

/** Examples that break a rule, with what HL7's validator or the specification says against them. */
const wrong: Readonly<Record<string, string>> = {
  // `m^2` is not a code of UCUM: https://ucum.org/ucum#section-Exponents
  'Observation-body-surface-area-example.json': 'unknown-unit',
  // vs-1 on a Period: HL7's validator refuses the three as well.
  'Observation-AverageBloodPressure-example.json': 'broken-invariant',
  'Observation-TwentyFourHourBloodPressure-example.json': 'broken-invariant',
  'Observation-VitalSignsPanel-example.json': 'broken-invariant',
  // Their codes imply HL7's own profiles, which ask for 8302-2 and 9843-4 beside them; HL7's command
  // line applies these as well: https://hl7.org/fhir/R4/observation-vitalsigns.html
  'Observation-bodyLength-example.json': 'missing-property',
  'Observation-headCircumference-example.json': 'missing-property',
  // cqf-calculatedValue takes no Expression in the edition of the pack; HL7's validator refuses it as well.
  'Questionnaire-questionnaire-sdc-profile-example-form-behavior.json': 'wrong-type',
  // sdc-t1: HL7's validator refuses it as well.
  'Task-request-task-example.json': 'broken-invariant',
  // Ids with an underscore, which HL7's validator refuses as well, and an update to another id.
  'Bundle-example-lab-test-creation-transaction-request.json': 'invalid-value,contradiction',
  'Bundle-example-lab-test-creation-transaction-response.json': 'invalid-value',
};

test.each(guides)('examples of $name conform, with snapshots and without', async (guide) => {
  const { definitions, examples } = await readGuide(guide);
  const core = await coreStructures();
  const vitalSigns = core.get('http://hl7.org/fhir/StructureDefinition/vitalsigns');
  const bare = [...definitions.map(({ snapshot: _, ...rest }) => rest), vitalSigns];
  for (const given of [definitions, bare]) {
    const profiles = compileProfiles(given);
    const found: Record<string, string> = {};
    for (const { file, resource } of examples) {
      const { issues, unchecked } = validateBundle(resource, { profiles });
      const errors = issues.filter(({ severity }) => severity === 'error');
      // Built on a definition of another guide, which only the snapshot has.
      const hollow = unchecked.some(({ why }) => why.includes('was not given'));
      if (given === bare && hollow) found[file] = wrong[file] ?? '';
      if (hasErrors(issues)) found[file] = [...new Set(errors.map(({ code }) => code))].join();
    }
    for (const [file, codes] of Object.entries(found)) if (codes === '') delete found[file];
    const expected = Object.entries(wrong).filter(([file]) =>
      examples.some((one) => one.file === file),
    );
    expect(found).toEqual(Object.fromEntries(expected));
  }
});

/** What a validation rests on; texts and mappings are left out. */
const compared = ['min', 'max', 'type', 'binding', 'slicing', 'contentReference'] as const;

/** The published ones name versions of canonical URLs where differentials do not. */
function plain(value: unknown): string {
  return JSON.stringify(value ?? null).replace(/\|[\w.-]+(?=")/g, '');
}

test.each(guides)('snapshots of $name made from differentials', async (guide) => {
  const { definitions } = await readGuide(guide);
  const core = await coreStructures();
  const own = new Map(definitions.map((each) => [each['url'], each]));
  const { definitions: base } = compileProfiles([]);
  const counts = { structures: 0, elements: 0, notMade: 0, notPublished: 0, different: 0 };
  for (const structure of definitions) {
    if (structure['resourceType'] !== 'StructureDefinition') continue;
    const { snapshot, ...bare } = structure;
    const find = (url: string) => own.get(url) ?? core.get(url);
    const { elements, missing } = snapshotOf(bare, find, base);
    // Built on a definition of another guide, which is not at hand.
    if (missing.length > 0) continue;
    const theirs = elementsById(isObject(snapshot) ? snapshot['element'] : []);
    const made = elementsById(elements);
    counts.structures += 1;
    counts.elements += theirs.size;
    counts.notMade += [...theirs.keys()].filter((id) => !made.has(id)).length;
    counts.notPublished += [...made.keys()].filter((id) => !theirs.has(id)).length;
    counts.different += [...theirs].filter(([id, each]) => isOther(made.get(id), each)).length;
  }
  console.info(guide.name, JSON.stringify(counts));
  const wrongs = counts.notMade + counts.notPublished + counts.different;
  expect(wrongs / counts.elements).toBeLessThan(0.12);
});

function isOther(made: JsonObject | undefined, published: JsonObject): boolean {
  return compared.some((name) => made && plain(made[name]) !== plain(published[name]));
}

function elementsById(elements: unknown): Map<unknown, JsonObject> {
  return new Map(objectsOf(elements).map((each) => [each['id'], each]));
}

/** HL7's own definitions of R4, by canonical URL. */
async function coreStructures(): Promise<ReadonlyMap<unknown, JsonObject>> {
  const folder = await published('hl7.fhir.r4.examples', '4.0.1');
  const files = readdirSync(folder).filter((file) => file.startsWith('StructureDefinition-'));
  return new Map(
    files.map((file) => {
      // Published as a StructureDefinition.
      const one = JSON.parse(readFileSync(join(folder, file), 'utf8')) as JsonObject;
      return [one['url'], one];
    }),
  );
}
