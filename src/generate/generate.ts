import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Runs every generator that needs nothing but this project, each after those whose output it reads,
 * and does all or nothing: when one finds a fault, every generated file is put back as it was and
 * the fault says what to write where.
 * Run: npm run generate
 */
const project = fileURLToPath(new URL('../../', import.meta.url));

interface Step {
  /** Program in this folder, without its ending. */
  readonly program: string;
  readonly writes: string;
}

/** In the order in which they read each other's output. */
export const steps: readonly Step[] = [
  { program: 'terminology/units', writes: 'the table of units, with exact factors' },
  { program: 'terminology/terminology', writes: 'the look-up tables' },
  { program: 'terminology/languages', writes: 'the displays in other languages' },
  { program: 'terminology/lexicon', writes: 'the words by which codes are looked for' },
  { program: 'terminology/code-types', writes: 'the codes as types' },
  { program: 'schema/exam-schema', writes: 'the JSON Schema of an exam' },
  { program: 'schema/catalogue-schema', writes: 'the JSON Schema of the rows of an adopter' },
  {
    program: 'schema/check-settings-schema',
    writes: 'the JSON Schema of the settings of the checks',
  },
  { program: 'schema/clinic-schema', writes: 'the JSON Schema of a clinic file' },
  { program: 'known-names', writes: 'the names that paths of issues may show' },
  { program: 'schema/mapping-schema', writes: 'the JSON Schema of a mapping' },
  { program: 'rules-table', writes: 'the list of rules' },
  { program: 'hazards', writes: 'the hazard log as people read it' },
  { program: 'terminology/terminology-readme', writes: 'the counts and sources of the tables' },
  { program: 'terminology/places', writes: 'the table of places beside the views' },
  { program: 'terminology/code-ledger', writes: 'the ledger of codes ever given' },
];

/** Files and folders that the steps write into; hand-written tables among them stay as they are. */
const written = [
  'src/terminology/tables',
  'terminology',
  'profiles',
  'src/checks/RULES.md',
  'src/issues/known-names.ts',
  'src/checks/HAZARDS.md',
];

type Contents = ReadonlyMap<string, Buffer>;

/** Every file below the written places, as it is now. */
function contents(): Contents {
  const found = new Map<string, Buffer>();
  const take = (path: string): void => {
    if (!existsSync(path)) return;
    if (statSync(path).isFile()) {
      found.set(path, readFileSync(path));
      return;
    }
    for (const name of readdirSync(path)) if (name !== 'node_modules') take(join(path, name));
  };
  for (const place of written) take(join(project, place));
  return found;
}

/** Paths, relative to the project, whose content is not what it was. */
function changedSince(before: Contents): string[] {
  const now = contents();
  const paths = new Set([...before.keys(), ...now.keys()]);
  return [...paths]
    .filter((path) => {
      const old = before.get(path);
      const content = now.get(path);
      return old === undefined || content === undefined || !old.equals(content);
    })
    .map((path) => relative(project, path))
    .sort();
}

function putBack(before: Contents): void {
  for (const path of changedSince(before)) {
    const old = before.get(join(project, path));
    if (old === undefined) rmSync(join(project, path));
    else writeFileSync(join(project, path), old);
  }
}

function main(): number {
  const before = contents();
  for (const { program, writes } of steps) {
    const file = fileURLToPath(new URL(`${program}.ts`, import.meta.url));
    const run = spawnSync(process.execPath, ['--import', 'tsx', file], {
      cwd: project,
      encoding: 'utf8',
    });
    if (run.status === 0) continue;
    putBack(before);
    console.error(run.stderr.trimEnd());
    console.error(`\nNothing was generated: ${program}.ts (${writes}) found what stands above.`);
    return 1;
  }
  const changed = changedSince(before);
  console.log(
    changed.length === 0 ? 'Everything is up to date.' : `Written:\n${changed.join('\n')}`,
  );
  return 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = main();
