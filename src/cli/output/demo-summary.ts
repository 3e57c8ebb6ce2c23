import type { Coverage, CoverageCount } from '../../checks/coverage/coverage.ts';
import type { AnyBundle } from '../../export/to-bundle.ts';
import { type Issue, issueText } from '../../issues/issue.ts';
import { countedAs } from '../../kinds/registries/counted-as.ts';
import type { Exam } from '../../model/exam.ts';

/** The usual caution; it stands under everything that people may read as advice. */
export const CAUTION =
  'Supports the clinician and never replaces their judgement or local rules; not legal or medical advice.';

export interface DemoParts {
  readonly exam: Exam;
  readonly bundle: AnyBundle;
  readonly coverage: Coverage;
  readonly issues: readonly Issue[];
}

/** A page of counts: what the exam states, what its protocol asks for, what the bundle holds. */
export function demoSummary({ exam, bundle, coverage, issues }: DemoParts): string {
  return [
    'Yearly check of an invented crane operator',
    '',
    `Protocol     ${coverage.protocol.display}, version ${coverage.protocol.version}`,
    `Time         ${exam.performed.start} to ${exam.performed.end ?? 'not stated'}`,
    `Record       ${exam.status}, written ${exam.recorded}`,
    '',
    `Statements   ${exam.statements.length}`,
    ...rows(counted(exam.statements.map(countedAs))),
    '',
    'Coverage     covered + documented as not done / asked for',
    ...rows(new Map(coverageKinds.map((kind) => [kind, fraction(coverage[kind])]))),
    '',
    `Resources    ${bundle.entry?.length ?? 0}`,
    ...rows(counted(resourceTypes(bundle))),
    '',
    `Issues       ${issues.length === 0 ? 'none' : ''}`.trimEnd(),
    ...issues.map((found) => `  ${issueText(found)}`),
    '',
    ...(exam.conclusion === undefined
      ? []
      : [`Conclusion   ${exam.conclusion.text}`, `Concern      ${exam.conclusion.concern}`, '']),
    CAUTION,
    '',
  ].join('\n');
}

export function resourceTypes(bundle: AnyBundle): string[] {
  return (bundle.entry ?? []).flatMap(({ resource }) =>
    resource === undefined ? [] : [resource.resourceType],
  );
}

const coverageKinds = ['regions', 'methods', 'points', 'tests', 'measures'] as const;

function fraction({ covered, documented, required }: CoverageCount): string {
  return `${covered} + ${documented} / ${required}`;
}

function counted(names: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return new Map([...counts].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function rows(table: ReadonlyMap<string, number | string>): string[] {
  return [...table].map(([name, count]) => `  ${name.padEnd(24)}${count}`);
}
