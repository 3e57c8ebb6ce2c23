import { hasErrors } from '../../src/index.ts';
import { faults } from '../../src/testing/faults/apply-fault.ts';
import { keptBases } from './bases.ts';
import type { FhirRelease } from './corpus.ts';
import { mutants } from './mutants.ts';
import { ourIssues } from './ours.ts';
import differences from './verdicts/differences.json' with { type: 'json' };
import { keptVerdicts } from './verdicts.ts';

/** How the two verdicts on a mutant stand to each other, where they do not both refuse it. */
type Difference = 'refusedByUsAlone' | 'acceptedByUsAlone' | 'acceptedByBoth';

export interface Comparison {
  readonly mutants: number;
  /** Same verdict from both. */
  readonly agreed: number;
  /** Of mutants of faults whose difference is not listed for this version. */
  readonly agreedOfUnlisted: number;
  readonly unlisted: number;
  /** Mutants without a kept verdict: record-verdicts.ts has not been run since they changed. */
  readonly unknown: readonly string[];
  /** Differences that differences.json does not list. */
  readonly surprises: readonly string[];
  /** Rows of differences.json that no mutant shows any more. */
  readonly stale: readonly string[];
}

/**
 * Our verdicts on the mutants of a version beside the kept ones of HL7's validator: on all of them,
 * or on every so many. Which rows no mutant shows any more is only known of all.
 */
export function compareVerdicts(version: FhirRelease, every = 1): Comparison {
  const kept = keptVerdicts()[version];
  const listed = listedRows(version);
  const open = new Set(listed);
  const of = new Map(faults.map((fault) => [fault.id, fault]));
  const surprises = new Set<string>();
  const unknown: string[] = [];
  const count = { mutants: 0, agreed: 0, agreedOfUnlisted: 0, unlisted: 0 };
  let at = 0;
  for (const { fault, text, digest, base, seed } of mutants(keptBases(), version)) {
    at += 1;
    if (at % every !== 0) continue;
    const verdict = kept.get(fault)?.find((one) => one.digest === digest);
    if (verdict === undefined) {
      unknown.push(`${version} ${fault} ${base} ${seed}`);
      continue;
    }
    const ours = !hasErrors(ourIssues(text, version));
    const agreed = ours === verdict.valid;
    const difference = differenceOf(ours, verdict.valid, of.get(fault)?.severity === 'error');
    count.mutants += 1;
    count.agreed += agreed ? 1 : 0;
    const row = difference && `${difference} ${version} ${fault}`;
    if (row !== undefined && listed.has(row)) {
      open.delete(row);
      continue;
    }
    count.unlisted += 1;
    count.agreedOfUnlisted += agreed ? 1 : 0;
    if (row !== undefined) surprises.add(row);
  }
  return { ...count, unknown, surprises: [...surprises], stale: every === 1 ? [...open] : [] };
}

function differenceOf(ours: boolean, theirs: boolean, isError: boolean): Difference | undefined {
  if (ours !== theirs) return theirs ? 'refusedByUsAlone' : 'acceptedByUsAlone';
  // What the specification only advises against may be accepted.
  return ours && isError ? 'acceptedByBoth' : undefined;
}

function listedRows(version: FhirRelease): Set<string> {
  const kinds = ['refusedByUsAlone', 'acceptedByUsAlone', 'acceptedByBoth'] as const;
  type Row = { readonly fault: string; readonly versions: readonly string[] };
  return new Set(
    kinds.flatMap((kind) =>
      (differences[kind] as readonly Row[]) // an empty list has no type of its own
        .filter(({ versions }) => versions.includes(version))
        .map(({ fault }) => `${kind} ${version} ${fault}`),
    ),
  );
}
