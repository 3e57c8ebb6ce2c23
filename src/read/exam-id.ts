import { type Issue, issue } from '../issue.ts';
import { peek } from './element.ts';
import type { Entries, Entry } from './entries.ts';
import { keyOfResource } from './foreign/key.ts';
import type { ReadOptions } from './options.ts';

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
  examSystem: string,
  { exam, supplied }: Pick<ReadOptions, 'exam' | 'supplied'>,
): Chosen | Issue {
  const reports = entries.ofType('DiagnosticReport').map((report) => ({
    report,
    id: examIdOf(report, examSystem),
  }));
  const own = reports.filter(({ id }) => id !== undefined && (exam === undefined || id === exam));
  const candidates = own.length > 0 ? own : exam === undefined ? reports : [];
  if (candidates.length > 1) {
    return issue('several-exams', ['entry'], 'the bundle holds several exams', {
      expected: 'the option exam, with the id of one of them',
    });
  }
  const [candidate] = candidates;
  if (candidate === undefined && exam !== undefined) {
    return issue('missing-property', ['entry'], 'the bundle does not hold this exam', {
      expected: 'a DiagnosticReport with the id of the exam as identifier',
    });
  }
  const first = candidate?.report ?? entries.ofType('Observation')[0];
  if (first === undefined) {
    return issue(
      'missing-property',
      ['entry'],
      'the bundle holds nothing that an exam is made of',
      {
        expected: 'a DiagnosticReport or an Observation',
      },
    );
  }
  return {
    id: candidate?.id ?? supplied?.id ?? keyOfResource(first),
    report: candidate?.report,
    own: candidate?.id !== undefined,
  };
}

function examIdOf({ resource }: Entry, system: string): string | undefined {
  const list = peek(resource, 'identifier');
  if (!Array.isArray(list)) return undefined;
  for (const entry of list) {
    const { system: of, value } = (entry ?? {}) as Record<string, unknown>; // read as unknown alone
    if (of === system && typeof value === 'string') return value;
  }
  return undefined;
}
