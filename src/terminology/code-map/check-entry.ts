import {
  type Issue,
  type IssueDetails,
  issue,
  type RecordCode,
  type RecordFacts,
} from '../../issues/issue.ts';
import { firstNearest, type nearest } from '../../issues/nearest.ts';
import type { TableName } from '../built-in.ts';
import type { Catalogue } from '../catalogue.ts';
import { type ExportedCode, exportedCodes } from '../exported-codes.ts';
import { kebab, tableOf, tablesByName } from '../named-table.ts';
import { formFault } from '../published/code-form.ts';
import { displayVerdict } from '../published/published-names.ts';
import { units } from '../tables/units.ts';
import type { Relation } from '../types.ts';
import { type CodeMapEntry, type EntryProperty, pathOf } from './entry.ts';

/** What a map is checked against. */
export interface MapContext {
  readonly catalogue: Catalogue;
  /** Base of our own code systems. */
  readonly base: string;
}

/** An entry that is sound by itself. `source` is `table|code`, or `system|code` of another system. */
export interface SoundEntry {
  readonly source: string;
  readonly own: boolean;
  readonly relation: Relation;
  readonly replace: boolean;
  readonly entry: CodeMapEntry;
}

export interface CheckedEntry {
  readonly sound?: SoundEntry;
  readonly issues: readonly Issue[];
}

const relations: readonly string[] = ['equivalent', 'wider', 'narrower', 'relatedto'];
const kinds: ReadonlyMap<string, string> = /*@__PURE__*/ new Map(
  units.map(({ code, kind }) => [code, kind]),
);

/** Checks entries one by one; what was looked up for one serves the next. */
export function entryChecker(context: MapContext): (entry: CodeMapEntry) => CheckedEntry {
  const tables = tablesByName(context.catalogue);
  const near = firstNearest();
  const codes = new Map<TableName, ReadonlyMap<string, ExportedCode>>();
  const codesOf = (table: TableName): ReadonlyMap<string, ExportedCode> => {
    const known =
      codes.get(table) ??
      new Map(exportedCodes(context.catalogue, table).map((one) => [one.code, one]));
    codes.set(table, known);
    return known;
  };

  return (entry) => {
    const issues: Issue[] = [];
    const report = reporter(entry, issues);
    const table = tableOf(entry.source, context.base, tables);
    if (table !== undefined) checkRow(entry, table, { codes: codesOf(table), near }, report);
    else if (!isUri(entry.source)) checkName(entry, { tables, near }, report);
    checkWords(entry, report);
    checkTarget(entry, tableOf(entry.system, context.base, tables) !== undefined, report);
    if (entry.unit !== undefined) checkUnit(entry, table, context.catalogue, report);
    if (issues.some(({ severity }) => severity === 'error')) return { issues };
    const sound: SoundEntry = {
      source: `${table ?? entry.source}|${entry.code}`,
      own: table !== undefined,
      relation: (entry.relation ?? 'equivalent') as Relation, // one of the list, or a removal
      replace: entry.action === 'replace',
      entry,
    };
    return { sound, issues };
  };
}

type Report = <Code extends RecordCode>(
  code: Code,
  property: EntryProperty,
  facts: RecordFacts<Code>,
  details?: IssueDetails,
) => void;

function reporter(entry: CodeMapEntry, issues: Issue[]): Report {
  return (code, property, facts, details = {}) => {
    const found = { ...details, source: entry.position };
    issues.push(issue(code, pathOf(entry, property), facts, found));
  };
}

function checkRow(
  { code }: CodeMapEntry,
  table: TableName,
  known: { readonly codes: ReadonlyMap<string, ExportedCode>; readonly near: typeof nearest },
  report: Report,
): void {
  const { codes } = known;
  if (codes.has(code)) return;
  const near = known.near(code, codes.keys());
  report('unknown-code', 'code', { reason: 'table', table: kebab(table), near });
}

function checkName(
  { source }: CodeMapEntry,
  known: { readonly tables: ReadonlyMap<string, TableName>; readonly near: typeof nearest },
  report: Report,
): void {
  const near = known.near(source, known.tables.keys());
  report('unknown-code', 'source', { reason: 'map-table', near });
}

function checkWords({ relation, action, target }: CodeMapEntry, report: Report): void {
  if (action !== undefined && action !== 'add' && action !== 'replace') {
    report('unknown-word', 'action', { reason: 'action' });
  }
  if (target === undefined && action !== 'replace') {
    report('missing-property', 'target', { reason: 'target' });
  }
  if (relation === undefined && target !== undefined) {
    report('missing-property', 'relation', { reason: 'relation', codes: relations });
  }
  if (relation !== undefined && !relations.includes(relation)) {
    report('unknown-word', 'relation', { reason: 'map-relation', codes: relations });
  }
}

function checkTarget(entry: CodeMapEntry, ours: boolean, report: Report): void {
  const { system, target, display } = entry;
  if (ours) {
    report('wrong-system', 'system', { reason: 'own-row' });
    return;
  }
  if (!isUri(system)) {
    report('invalid-value', 'system', { reason: 'system-uri' });
    return;
  }
  if (target === undefined) return;
  const fault = formFault(system, target);
  if (fault !== undefined) {
    const property = fault.at === 'system' ? 'system' : 'target';
    report(fault.code, property, fault.facts);
  } else if (!/^\S+( \S+)*$/.test(target)) {
    report('invalid-value', 'target', { reason: 'target-code' });
  }
  if (display !== undefined && displayVerdict(system, target, display) === 'other-code') {
    report('display-mismatch', 'display', { reason: 'other-code' }, { severity: 'warning' });
  }
}

function checkUnit(
  { code, unit = '' }: CodeMapEntry,
  table: TableName | undefined,
  catalogue: Catalogue,
  report: Report,
): void {
  const row = table === 'measures' ? catalogue.measures.get(code) : undefined;
  if (row === undefined) {
    report('wrong-unit', 'unit', { reason: 'not-a-measure' });
  } else if (!kinds.has(unit)) {
    report('unknown-unit', 'unit', { reason: 'measure', units: [row.unit, ...(row.units ?? [])] });
  } else if (kinds.get(unit) !== kinds.get(row.unit)) {
    report('wrong-unit', 'unit', { reason: 'other-kind', units: [row.unit, ...(row.units ?? [])] });
  }
}

function isUri(text: string): boolean {
  return /^[a-z][a-z0-9+.-]*:\S+$/.test(text);
}
