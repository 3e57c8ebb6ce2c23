import type { Bundle } from 'fhir/r4.js';
import type * as r4b from 'fhir/r4b.js';
import type * as r5 from 'fhir/r5.js';
import { plainDataIssues } from '../../data/plain-data.ts';
import { idsOf } from '../../fhir/names/ids.ts';
import { identitySystems } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';
import { within } from '../../issues/budget.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import type { Exam } from '../../model/exam.ts';
import { parseExam } from '../../model/parse-exam.ts';
import { withoutHeldBack } from '../coding/held-back.ts';
import type { AnyResource } from '../context.ts';
import { createContext, type ExportSettings } from '../context.ts';
import type { ExportOptions } from '../options.ts';
import { examResources } from '../resources/exam-resources.ts';

type Previous = NonNullable<ExportOptions['previous']>;

/** As much as reading a bundle allows. */

interface Sent {
  readonly resources: readonly AnyResource[];
  readonly issues: readonly Issue[];
}

/**
 * The resources that the receiver was sent before, without what the SNOMED CT policy of today holds
 * back: a licence may have ended, and what was said in error must still be taken back.
 * `previousIssues` must have found no error.
 */
export function resourcesSent(previous: Previous, settings: ExportSettings): Sent {
  if (!isBundle(previous)) {
    const resources = examResources(createContext(previous, settings), { document: false });
    return { resources, issues: [] };
  }
  const sent = (previous.entry ?? []).flatMap(({ resource, fullUrl }) => {
    if (resource === undefined) return [];
    const { resourceType, ...rest } = resource;
    // A server that gives the ids was sent resources without; what we call them stands in fullUrl.
    const id = resource.id ?? fullUrl?.replace('urn:uuid:', '');
    return [{ resourceType, id, ...rest } as AnyResource]; // the same resource with its id
  });
  const { value: resources, held } = withoutHeldBack(sent, settings.rules);
  if (held === 0) return { resources, issues: [] };
  const withheld = issue(
    'withheld-code',
    ['previous'],
    { reason: 'sent-before' },
    { severity: 'information' },
  );
  return { resources, issues: [withheld] };
}

/** Statements that the last step withdrew, in a transaction that does not say what was sent before. */
export function notTakenBack(exam: Exam, { bundleType, previous }: ExportOptions): Issue[] {
  const at = (exam.history?.length ?? 0) - 1;
  const withdrawn = exam.history?.[at]?.withdrawn;
  if (bundleType !== 'transaction' || previous !== undefined || withdrawn === undefined) return [];
  return [
    issue(
      'not-exported',
      ['history', at, 'withdrawn'],
      { reason: 'withdrawn' },
      { severity: 'warning' },
    ),
  ];
}

/** Why what was sent before cannot be used: it has faults, or is another exam. */
export function previousIssues(exam: Exam | undefined, options: ExportOptions): Issue[] {
  const { previous } = options;
  if (previous === undefined || exam === undefined) return [];
  return isBundle(previous)
    ? bundleIssues(exam, previous, options)
    : examIssues(exam, previous, options);
}

function isBundle(previous: Previous): previous is Bundle | r4b.Bundle | r5.Bundle {
  return Object.hasOwn(previous, 'resourceType');
}

function examIssues(exam: Exam, previous: Exam, options: ExportOptions): Issue[] {
  const { catalogue, includeValues = false } = options;
  const { value, issues } = parseExam(previous, { ...(catalogue && { catalogue }), includeValues });
  const found = issues
    .filter(({ severity }) => severity === 'error')
    .map((fault): Issue => ({ ...fault, path: inPrevious(fault.path) }));
  return value === undefined || value.id === exam.id ? found : [...found, otherExam(['id'])];
}

function bundleIssues(
  exam: Exam,
  previous: Bundle | r4b.Bundle | r5.Bundle,
  options: ExportOptions,
): Issue[] {
  const unsafe = within(
    'bundle',
    undefined,
    () => plainDataIssues(previous),
    (why) => [endedIssue(why)],
  ).filter(({ severity }) => severity === 'error');
  if (unsafe.length > 0) return unsafe.map((found) => ({ ...found, path: inPrevious(found.path) }));
  const systems = identitySystems(options.canonicalBase ?? CANONICAL_BASE, options.identity);
  const id = idsOf(systems.exam, exam.id)(resourceName.bundle('transaction'));
  if (previous.id !== id) return [otherExam(['id'])];
  const whole =
    Array.isArray(previous.entry) &&
    previous.entry.every((entry) => typeof entry?.resource?.resourceType === 'string');
  return whole ? [] : [issue('invalid-value', inPrevious(['entry']), { reason: 'previous-entry' })];
}

function otherExam(path: Path): Issue {
  return issue('invalid-value', inPrevious(path), { reason: 'previous-exam' });
}

function inPrevious(path: Path): Path {
  return ['previous', ...path];
}
