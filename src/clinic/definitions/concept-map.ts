import type * as r4 from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { relationships } from '../../fhir/names/definition-names.ts';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';
import type { FhirVersion } from '../../fhir/version.ts';
import { exportedCodes } from '../../terminology/exported-codes.ts';
import { tableOf, tablesByName } from '../../terminology/named-table.ts';
import type { Clinic } from '../clinic.ts';
import type { CodeMapRow } from '../clinic-file.ts';

/** A line with the code systems that it leads between, and what its source is called. */
interface Line {
  readonly row: CodeMapRow;
  readonly source: string;
  readonly display: string | undefined;
}

/**
 * The code map of a clinic as a ConceptMap; undefined where there is none. What only holds for one unit
 * or takes the place of a code of ours is said in a comment, since FHIR has no word for it.
 */
export function clinicConceptMap(
  clinic: Clinic,
  version: FhirVersion,
): r4.ConceptMap | r5.ConceptMap | undefined {
  const { codeMap = [], catalogue: rows, name } = clinic.file;
  if (codeMap.length === 0) return undefined;
  const system = rows?.system;
  const head = {
    resourceType: 'ConceptMap' as const,
    id: 'clinic-code-map',
    ...(system !== undefined &&
      /^https?:/.test(system) && { url: `${system}/ConceptMap/code-map` }),
    name: 'ClinicCodeMap',
    ...(name !== undefined && { title: name }),
    status: 'active' as const,
  };
  const lines = codeMap.map(linesOf(clinic));
  const groups = byKey(lines, ({ source, row }) => JSON.stringify([source, row.system]));
  const lists = [...groups.values()];
  return version === 'R5'
    ? { ...head, group: lists.map((lines) => ({ ...between(lines), element: elementsR5(lines) })) }
    : { ...head, group: lists.map((lines) => ({ ...between(lines), element: elementsR4(lines) })) };
}

function linesOf(clinic: Clinic): (row: CodeMapRow) => Line {
  const { file, catalogue } = clinic;
  const base = file.canonicalBase ?? CANONICAL_BASE;
  const tables = tablesByName(catalogue);
  const displays = new Map<string, ReadonlyMap<string, { display: string; row: string }>>();
  return (row) => {
    const table = tableOf(row.source, base, tables);
    if (table === undefined) return { row, source: row.source, display: undefined };
    const known =
      displays.get(table) ?? new Map(exportedCodes(catalogue, table).map((one) => [one.code, one]));
    displays.set(table, known);
    const found = known.get(row.code);
    const own = catalogue[table].get(found?.row ?? '')?.system;
    return { row, source: own ?? codeSystemUrl(base, table), display: found?.display };
  };
}

function between([first]: readonly Line[]): { source: string; target: string } {
  return { source: first?.source ?? '', target: first?.row.system ?? '' };
}

/** Lines of one key together, in the order of the file. */
function byKey(
  lines: readonly Line[],
  keyOf: (line: Line) => string,
): ReadonlyMap<string, readonly Line[]> {
  const groups = new Map<string, Line[]>();
  for (const line of lines) {
    const key = keyOf(line);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [line]);
    else group.push(line);
  }
  return groups;
}

/** The targets of each source code. */
function byCode(lines: readonly Line[]): readonly (readonly [string, readonly Line[]])[] {
  return [...byKey(lines, ({ row }) => row.code)];
}

function elementsR4(lines: readonly Line[]): r4.ConceptMapGroupElement[] {
  return byCode(lines).map(([code, of]) => ({
    ...sourceOf(code, of),
    target: of.map(({ row }) =>
      row.target === undefined
        ? { equivalence: 'unmatched' as const }
        : { ...targetOf(row), equivalence: row.relation ?? 'equivalent' },
    ),
  }));
}

function elementsR5(lines: readonly Line[]): r5.ConceptMapGroupElement[] {
  return byCode(lines).map(([code, of]) => {
    const target = of.flatMap(({ row }) =>
      row.target === undefined
        ? []
        : [{ ...targetOf(row), relationship: relationships[row.relation ?? 'equivalent'] }],
    );
    return { ...sourceOf(code, of), ...(target.length === 0 ? { noMap: true } : { target }) };
  });
}

function sourceOf(
  code: string,
  [first]: readonly Line[],
): { readonly code: string; readonly display?: string } {
  const display = first?.display;
  return { code, ...(display !== undefined && { display }) };
}

function targetOf({ target = '', display, action, unit }: CodeMapRow): {
  readonly code: string;
  readonly display?: string;
  readonly comment?: string;
} {
  const comments = [
    ...(action === 'replace' ? ['In place of what the source has in this system.'] : []),
    ...(unit === undefined ? [] : [`For values in ${unit} alone.`]),
  ];
  return {
    code: target,
    ...(display !== undefined && { display }),
    ...(comments.length > 0 && { comment: comments.join(' ') }),
  };
}
