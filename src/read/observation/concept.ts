import { mappingsBeside } from '../../fhir/mapped.ts';
import { LOINC, SNOMED } from '../../fhir/names/systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { AdopterCodes } from '../../terminology/code-map/entry.ts';
import type { Language } from '../../terminology/languages/language.ts';
import type { ValueList } from '../../terminology/own-codes.ts';
import { loincDisplay } from '../../terminology/published/loinc.ts';
import { snomedDisplay } from '../../terminology/published/snomed.ts';
import { standardSystems } from '../../terminology/system-names.ts';
import type { Mapping, Value } from '../../terminology/types.ts';
import { claimEqual, type Element, innersOf, peek, textOf } from '../bundle/element.ts';
import type { Lookup } from '../bundle/lookup.ts';

/** What is needed to understand codes. */
export interface Codes {
  readonly catalogue: Catalogue;
  readonly lookup: Lookup;
  /** Of our displays and fixed words in the bundle. */
  readonly language: Language;
  /** The code map that the export was made with. */
  readonly adopted: AdopterCodes | undefined;
}

interface Expected {
  readonly system: string;
  readonly code: string;
  readonly display?: string | undefined;
  readonly version?: string | undefined;
}

/** A code of ours in a CodeableConcept, and the codings beside it that do not follow from it. */
export interface OwnCode {
  readonly code: string;
  readonly further: readonly Element[];
}

/** The first coding of one of these tables, without a claim. Undefined when its table is not certain. */
export function ownTable(
  { lookup }: Codes,
  concept: Element,
  tables: readonly TableName[],
): { readonly table: TableName; readonly code: string } | undefined {
  const list = peek(concept, 'coding');
  if (!Array.isArray(list)) return undefined;
  for (const coding of list) {
    const { system, code } = (coding ?? {}) as Record<string, unknown>; // read as unknown alone
    if (typeof system !== 'string' || typeof code !== 'string') continue;
    const fitting = lookup.tablesOf(system, code).filter((table) => tables.includes(table));
    const [table] = fitting;
    if (table !== undefined && fitting.length === 1) return { table, code };
  }
  return undefined;
}

/**
 * The code of a table in a CodeableConcept. Claims its coding, the mapped codings beside it, and the
 * text where it is the display.
 */
export function ownCode(
  codes: Codes,
  concept: Element | undefined,
  table: TableName,
  { strict = false }: { readonly strict?: boolean } = {},
): OwnCode | undefined {
  if (concept === undefined) return undefined;
  const code = ownTable(codes, concept, [table])?.code;
  if (code === undefined) return undefined;
  const { catalogue, lookup } = codes;
  const row = catalogue[table].get(code);
  const own = { system: lookup.systemOf(table, code), code, display: row?.display };
  const further = claimCodings(concept, [
    own,
    ...codingsBeside(codes, { table, code, maps: row?.maps }, strict),
  ]);
  claimEqual(concept, 'text', row?.display ?? code);
  return { code, further };
}

/** The code within a list of the table of values: `convention.mean` is `mean`. */
export function ownValue(
  codes: Codes,
  concept: Element | undefined,
  list: ValueList,
): string | undefined {
  if (concept === undefined) return undefined;
  const known = ownTable(codes, concept, ['values'])?.code;
  if (known?.startsWith(`${list}.`) !== true) return undefined;
  ownCode(codes, concept, 'values');
  return known.slice(list.length + 1);
}

/** The value of a row, coded as `row.value`: a grade of a scale, a form of a lesion. */
export function innerValue<V extends Value>(
  codes: Codes,
  concept: Element | undefined,
  { table, code, values }: { table: TableName; code: string; values: readonly V[] | undefined },
): V | undefined {
  if (concept === undefined) return undefined;
  const system = codes.lookup.systemOf(table, code);
  const [first] = innersOf(concept, 'coding');
  if (first === undefined || peek(first, 'system') !== system) return undefined;
  const value = values?.find((known) => peek(first, 'code') === `${code}.${known.code}`);
  if (value === undefined) return undefined;
  const own = { system, code: `${code}.${value.code}`, display: value.display };
  const beside = codingsBeside(codes, { table, code: own.code, maps: value.maps });
  claimCodings(concept, [own, ...beside]);
  claimEqual(concept, 'text', value.display);
  return value;
}

/** Words that stand in a CodeableConcept in place of the display; claims them. */
export function ownWords(concept: Element, display: string | undefined): string | undefined {
  return claimEqual(concept, 'text', display) ? undefined : textOf(concept, 'text');
}

/** A code of ours, with the mappings of its row. */
export interface Mapped {
  readonly table: TableName;
  /** As exported: `row.value` for a value. */
  readonly code: string;
  readonly maps: readonly Mapping[] | undefined;
}

/** Codings that an export writes beside ours, whatever its licence policy let out. */
export function codingsBeside(
  { adopted }: Pick<Codes, 'adopted'>,
  { table, code, maps = [] }: Mapped,
  strict = false,
): Expected[] {
  const entry = adopted?.entries.get(`${table}|${code}`);
  const kept = maps.filter(({ system }) => !entry?.replaces.has(standardSystems[system]));
  return [
    ...mappingsBeside(kept, strict).map(({ system, code: of }) =>
      system === 'loinc'
        ? { system: LOINC, code: of, display: loincDisplay(of) }
        : { system: SNOMED, code: of, display: snomedDisplay(of) },
    ),
    ...mappingsBeside(entry?.codings, strict),
  ];
}

/**
 * Claims the codings that are expected, in their order; any may be missing. The others are returned:
 * an equal coding that the caller added stands after ours.
 */
export function claimCodings(concept: Element, expected: readonly Expected[]): Element[] {
  let from = 0;
  return innersOf(concept, 'coding').filter((coding) => {
    const at = expected.findIndex(
      ({ system, code }, place) =>
        place >= from && peek(coding, 'system') === system && peek(coding, 'code') === code,
    );
    const known = expected[at];
    if (known === undefined) return true;
    from = at + 1;
    claimEqual(coding, 'system', known.system);
    claimEqual(coding, 'code', known.code);
    claimEqual(coding, 'display', known.display);
    claimEqual(coding, 'version', known.version);
    // The edition under whose licence the code was let out: a fact of the export, not of the exam.
    if (known.system === SNOMED) textOf(coding, 'version');
    return false;
  });
}
