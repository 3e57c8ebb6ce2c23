import { thresholds } from '../checks/settings/thresholds.ts';
import { isSame } from '../data/plain-data.ts';
import type { Issue } from '../issues/issue.ts';
import { firstNearest, type nearest } from '../issues/nearest.ts';
import type { Path } from '../issues/path.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import { type Reference, references } from '../terminology/references.ts';
import type { ClinicChecks, ClinicWords } from './clinic-file.ts';
import { issue } from './issue.ts';

interface Known {
  readonly catalogue: Catalogue;
  readonly near: typeof nearest;
}

/** Codes that settings and words name and the tables do not hold, each with the one most like it. */
export function codeIssues(
  { checks, words }: { readonly checks: ClinicChecks; readonly words: ClinicWords },
  catalogue: Catalogue,
): readonly Issue[] {
  const known: Known = { catalogue, near: firstNearest() };
  return [
    ...Object.entries(words).flatMap(([table, rows]) =>
      Object.keys(rows ?? {}).flatMap(
        (code) => rowIssues(known, [table as TableName, code], ['words', table, code]), // one of the type's tables
      ),
    ),
    ...protocolReferences(checks).flatMap(([table, code, ...path]) =>
      rowIssues(known, [table, code], ['checks', 'protocol', ...path]),
    ),
    ...(checks.negatives ?? []).flatMap((code, at) =>
      rowIssues(known, ['negatives', code], ['checks', 'negatives', at]),
    ),
    ...Object.keys(checks.sideDifferences ?? {}).flatMap((code) =>
      rowIssues(known, ['measures', code], ['checks', 'sideDifferences', code]),
    ),
    ...populationIssues(known, checks.populations ?? []),
  ];
}

function protocolReferences({ protocol }: ClinicChecks): readonly Reference[] {
  return protocol === undefined ? [] : (references.protocols?.(protocol) ?? []);
}

function rowIssues(
  { catalogue, near }: Known,
  [table, code]: readonly [TableName, string | undefined],
  path: Path,
): readonly Issue[] {
  if (code === undefined || catalogue[table].has(code)) return [];
  const facts = { reason: 'row', table, near: near(code, catalogue[table].keys()) } as const;
  return [issue('unknown-code', path, facts)];
}

function populationIssues(
  { catalogue, near }: Known,
  populations: readonly string[],
): readonly Issue[] {
  const all = [...catalogue.measures.values()].flatMap(({ ranges = [] }) => ranges);
  const codes = [...new Set(all.map(({ population }) => population))];
  return populations.flatMap((one, at) =>
    codes.includes(one)
      ? []
      : [
          issue('unknown-code', ['checks', 'populations', at], {
            reason: 'population',
            near: near(one, codes),
            codes,
          }),
        ],
  );
}

/** Settings of the checks that cannot both hold. */
export function settingClashes(checks: ClinicChecks, catalogue: Catalogue): readonly Issue[] {
  const { protocol, sideDifferences = {} } = checks;
  const held = protocol && catalogue.protocols.get(protocol.code);
  const issues: Issue[] = [];
  if (
    held !== undefined &&
    held.version === protocol?.version &&
    !isSame(asks(held), asks(protocol))
  ) {
    issues.push(
      issue('contradiction', ['checks', 'protocol', 'code'], { reason: 'protocol-twice' }),
    );
  }
  const limits = checks.thresholds ?? {};
  for (const measure of Object.keys(sideDifferences)) {
    const code = `difference-${measure}`;
    if (!Object.hasOwn(thresholds, code) || !Object.hasOwn(limits, code)) continue;
    const path = ['checks', 'sideDifferences', measure];
    issues.push(issue('contradiction', path, { reason: 'limit-twice', code }));
  }
  return issues;
}

/** What a protocol asks for, to be compared; its display and system ask for nothing. */
function asks({
  regions,
  points,
  tests,
  measures,
}: NonNullable<ClinicChecks['protocol']>): unknown {
  return [regions, points ?? [], tests ?? [], measures ?? []];
}
