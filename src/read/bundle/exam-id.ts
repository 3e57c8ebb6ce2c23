import type { IdentitySystems } from '../../fhir/names/part-names.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import { keyOfResource } from '../foreign/key.ts';
import type { ReadOptions } from '../options.ts';
import { peek } from './element.ts';
import type { Entries, Entry } from './entries.ts';

/** Which exam of a bundle is read, and the report it stands in. */
export interface Chosen {
  readonly id: string;
  readonly report: Entry | undefined;
  /** The exam was written by this library: its report has the identifier of an exam. */
  readonly own: boolean;
}

/**
 * The report of the exam: the one that has an exam's identifier, or else the only one there is. A
 * bundle without a report can be read too.
 */
export function chooseExam(
  entries: Entries,
  systems: Required<IdentitySystems>,
  { exam, supplied }: Pick<ReadOptions, 'exam' | 'supplied'>,
): Chosen | Issue {
  const reports = entries.ofType('DiagnosticReport').map((report) => ({
    report,
    id: valueUnder(report, systems.exam),
  }));
  const own = reports.filter(({ id }) => id !== undefined && (exam === undefined || id === exam));
  const candidates = own.length > 0 ? own : exam === undefined ? reports : [];
  if (candidates.length > 1) return severalExams();
  const [candidate] = candidates;
  if (candidate?.id !== undefined) return { id: candidate.id, report: candidate.report, own: true };
  if (candidate !== undefined) {
    const id = supplied?.id ?? keyOfResource(candidate.report);
    return { id, report: candidate.report, own: false };
  }
  return chooseUnreported(entries, systems, exam, supplied?.id);
}

/** Observations without a report: those of one exam of ours, or all where none names an exam. */
function chooseUnreported(
  entries: Entries,
  { statement }: Required<IdentitySystems>,
  exam: string | undefined,
  suppliedId: string | undefined,
): Chosen | Issue {
  const observations = entries.ofType('Observation');
  const named = observations.flatMap((entry) => valueUnder(entry, statement) ?? []);
  const ids = new Set(named.map((value) => value.slice(0, Math.max(0, value.indexOf('|')))));
  const wanted = exam === undefined ? [...ids] : [...ids].filter((id) => id === exam);
  if (wanted.length > 1) return severalExams();
  const [id] = wanted;
  if (id !== undefined) return { id, report: undefined, own: true };
  const [first] = observations;
  if (exam !== undefined || first === undefined) {
    return issue('missing-property', ['entry'], { reason: 'exam' });
  }
  return { id: suppliedId ?? keyOfResource(first), report: undefined, own: false };
}

function severalExams(): Issue {
  return issue('several-exams', ['entry'], { reason: 'choose' });
}

/** Value of the first identifier under a system. */
function valueUnder({ resource }: Entry, wanted: string): string | undefined {
  const list = peek(resource, 'identifier');
  if (!Array.isArray(list)) return undefined;
  for (const entry of list) {
    const { system, value } = (entry ?? {}) as Record<string, unknown>; // read as unknown alone
    if (system === wanted && typeof value === 'string') return value;
  }
  return undefined;
}
