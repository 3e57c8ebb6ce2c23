import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { type RunnerTestCase, TestRunner } from 'vitest';
import { getFn } from 'vitest/suite';
import { type Verdict, workFiles } from './plan.ts';

/** The switchboard that the instrumenter of StrykerJS puts into sources. */
interface Switches {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: Coverage;
}
interface Coverage {
  readonly static: Record<string, number>;
  readonly perTest: Record<string, Record<string, number>>;
}
// The name that instrumented sources look up, which no type of globalThis has.
const world = globalThis as { __stryker__?: Switches };
world.__stryker__ ??= {};
const switches = world.__stryker__;
switches.mutantCoverage ??= { static: {}, perTest: {} };
const coverage = switches.mutantCoverage;
const TEST = 'test';

/** Runs of a mutant, as a multiple of those without it, after which it counts as an endless loop. */
const LOOP = 100;

/** Milliseconds of the processor that one test may take for all mutants; those beyond are left to other tests. */
const most = Number(process.env['MUTATION_TEST_MS']);

function used(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

const killed = new Set<string>();
const reached = new Set<string>();
const met = new Set<string>();
const loaded = new Set<string>();
for (const line of existsSync(workFiles.verdicts)
  ? readFileSync(workFiles.verdicts, 'utf8').split('\n')
  : []) {
  if (line === '') continue;
  const { id, said }: Verdict = JSON.parse(line);
  if (said === 'killed' || said === 'hung') killed.add(id);
}

function say(verdict: Verdict): void {
  appendFileSync(workFiles.verdicts, `${JSON.stringify(verdict)}\n`);
}

function tellOnce(told: Set<string>, ids: object, said: Verdict['said']): void {
  for (const id of Object.keys(ids)) {
    if (told.has(id)) continue;
    told.add(id);
    say({ id, said });
  }
}

/**
 * Runs each test without any mutant, then with each that it reaches and no test has killed, in the same
 * process: loading the modules anew for each mutant takes a hundred times as long. A test that does not
 * pass twice without mutants, before or after, says nothing.
 */
export default class MutantRunner extends TestRunner {
  async runTask(test: RunnerTestCase): Promise<void> {
    tellOnce(loaded, coverage.static, 'loaded');
    coverage.perTest[TEST] = {};
    switches.currentTestId = TEST;
    const began = used();
    try {
      await getFn(test)();
    } finally {
      switches.currentTestId = undefined;
    }
    const hits = coverage.perTest[TEST];
    tellOnce(met, hits, 'met');
    const alive = Object.keys(hits).filter((id) => !killed.has(id));
    const name = `${test.file.name} > ${test.name}`;
    if (alive.length === 0) return;
    if (!(await this.#passes(test))) return console.error(`MUTATION not repeatable: ${name}`);
    // What was run least so far comes first, so that each mutant meets some test.
    alive.sort((a, b) => Number(reached.has(a)) - Number(reached.has(b)));
    for (const [at, id] of alive.entries()) {
      if (used() - began > most) {
        return console.error(`MUTATION ${alive.length - at} of ${alive.length} left out: ${name}`);
      }
      if (!(await this.#fails(test, id, hits[id] ?? 0))) continue;
      killed.add(id);
      say({ id, said: 'killed', test: name });
      if (!(await this.#passes(test))) return console.error(`MUTATION ${id} stays: ${name}`);
    }
  }

  async #fails(test: RunnerTestCase, id: string, hits: number): Promise<boolean> {
    writeFileSync(workFiles.current, id);
    switches.activeMutant = id;
    switches.hitCount = 0;
    switches.hitLimit = (hits + 1) * LOOP;
    const passed = await this.#passes(test);
    const ran = switches.hitCount > 0;
    switches.activeMutant = undefined;
    switches.hitCount = undefined;
    writeFileSync(workFiles.current, '');
    if (passed && ran) tellOnce(reached, { [id]: true }, 'reached');
    return ran && !passed;
  }

  async #passes(test: RunnerTestCase): Promise<boolean> {
    this.onBeforeTryTask(test);
    try {
      await getFn(test)();
      this.onAfterTryTask(test);
      return true;
    } catch {
      return false;
    }
  }
}
