import type { CoverageTally } from '../audit.ts';
import { addDifferences } from './differences.ts';
import type { AuditSums } from './sums.ts';

/**
 * Adds what two auditors have counted. Order and grouping make no difference.
 *
 * @param one From `sums()` of an auditor, or from `parseAuditSums`.
 * @param other The same of other exams, counted with the same options.
 * @returns The sums of both.
 * @example
 * const [spring, autumn] = [createAuditor(), createAuditor()];
 * const year = addSums(spring.sums(), autumn.sums());
 */
export function addSums(one: AuditSums, other: AuditSums): AuditSums {
  const first = [one.first, other.first].filter((day) => day !== undefined).sort()[0];
  const last = [one.last, other.last]
    .filter((day) => day !== undefined)
    .sort()
    .at(-1);
  return {
    format: one.format,
    exams: one.exams + other.exams,
    ...(first !== undefined && { first }),
    ...(last !== undefined && { last }),
    statuses: byName(one.statuses, other.statuses, plus),
    concerns: byName(one.concerns, other.concerns, plus),
    protocols: byName(one.protocols, other.protocols, addTallies),
    regions: byName(one.regions, other.regions, addTallies),
    reasons: byName(one.reasons, other.reasons, plus),
    findings: byName(one.findings, other.findings, plus),
    prompts: byName(one.prompts, other.prompts, (a, b) => ({
      fired: a.fired + b.fired,
      open: a.open + b.open,
    })),
    corrections: {
      exams: one.corrections.exams + other.corrections.exams,
      steps: one.corrections.steps + other.corrections.steps,
      sides: one.corrections.sides + other.corrections.sides,
    },
    pairs: one.pairs + other.pairs,
    signs: byName(one.signs, other.signs, (a, b) => ({
      both: a.both + b.both,
      first: a.first + b.first,
      second: a.second + b.second,
      neither: a.neither + b.neither,
    })),
    measures: byName(one.measures, other.measures, addDifferences),
    digits: byName(one.digits, other.digits, (a, b) => a.map((some, at) => some + (b[at] ?? 0))),
  };
}

type Named<Value> = Readonly<Record<string, Value>>;

const plus = (a: number, b: number): number => a + b;

function addTallies(a: CoverageTally, b: CoverageTally): CoverageTally {
  return {
    required: a.required + b.required,
    complete: a.complete + b.complete,
    partial: a.partial + b.partial,
    carried: a.carried + b.carried,
    documented: a.documented + b.documented,
    gaps: a.gaps + b.gaps,
  };
}

/** By name, so that two audits can be laid side by side. */
function byName<Value>(
  one: Named<Value>,
  other: Named<Value>,
  sum: (a: Value, b: Value) => Value,
): Record<string, Value> {
  const all = new Map(Object.entries(one));
  for (const [name, value] of Object.entries(other)) {
    const known = all.get(name);
    all.set(name, known === undefined ? value : sum(known, value));
  }
  return sorted(all);
}

export function sorted<Value>(map: ReadonlyMap<string, Value>): Record<string, Value> {
  return Object.fromEntries([...map].sort(([a], [b]) => (a < b ? -1 : 1)));
}
