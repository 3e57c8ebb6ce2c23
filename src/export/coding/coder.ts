import type { CodeableConcept, Coding } from 'fhir/r4.js';
import { snomedMayLeave } from '../../fhir/licence/snomed-policy.ts';
import { mappingsBeside } from '../../fhir/mapped.ts';
import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { LOINC, SNOMED } from '../../fhir/names/systems.ts';
import type * as exam from '../../model/primitive.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type {
  AdopterCodes,
  AdopterCoding,
  AdopterEntry,
} from '../../terminology/code-map/entry.ts';
import type { CodeIn } from '../../terminology/own-codes.ts';
import { loincDisplay } from '../../terminology/published/loinc.ts';
import { snomedDisplay } from '../../terminology/published/snomed.ts';
import { standardSystem, standardSystems } from '../../terminology/system-names.ts';
import type { Mapping, Value } from '../../terminology/types.ts';
import { type CodingRules, callerCodingLeaves } from './caller-codings.ts';

/**
 * Turns codes of our tables into FHIR codings, under the licence policy of the export. A code that no
 * row has is a fault of the library, since `parseExam` refuses it in an exam, and throws: an empty
 * coding would say nothing.
 */
export interface Coder {
  /** Our own coding first, then the mapped ones that the policy lets out. */
  concept<T extends TableName>(table: T, code: CodeIn<T>, text?: string): CodeableConcept;
  /** The same with equivalent mappings only: for what is absent, suspected or not to be decided. */
  strictConcept<T extends TableName>(table: T, code: CodeIn<T>): CodeableConcept;
  /** A value that stands inside a row: `lesion-border` + `irregular`. */
  valueConcept(table: TableName, code: string, value: Value): CodeableConcept;
  codings<T extends TableName>(table: T, code: CodeIn<T>, strict?: boolean): Coding[];
  /** Codings beside our own for a region and side, named as `placeCode` does. */
  besideSide(region: string, sided: string, strict: boolean): Coding[];
  /** Codings of the adopter's map that stand for a measure in one unit alone; `strict` as above. */
  unitCodings(measure: string, unit: string, strict: boolean): Coding[];
  display<T extends TableName>(table: T, code: CodeIn<T>): string;
  /** Codings of the caller that are sound and that the policy lets out. */
  fromCaller(codings: readonly exam.Coding[] | undefined): Coding[];
  snomed(id: string): Coding | undefined;
}

/** Codings by code of one table. */
type Made = Map<string, readonly Coding[]>;

/** What the coder works with, made once for an export. */
export interface CoderParts {
  readonly catalogue: Catalogue;
  readonly base: string;
  readonly rules: CodingRules;
  readonly codes?: AdopterCodes | undefined;
}

export function createCoder({ catalogue, base, rules, codes }: CoderParts): Coder {
  const { policy, freeSet } = rules;
  const systems = new Map<TableName, string>();
  // Codings made so far: any that may be sent, and the strict ones.
  const known = { loose: new Map<TableName, Made>(), strict: new Map<TableName, Made>() };

  const system = (table: TableName, code: string): string => {
    const own = catalogue[table].get(code)?.system;
    if (own !== undefined) return own;
    let url = systems.get(table);
    if (url === undefined) {
      url = codeSystemUrl(base, table);
      systems.set(table, url);
    }
    return url;
  };

  const snomed = (id: string): Coding | undefined => {
    if (!snomedMayLeave(policy, id, freeSet)) return undefined;
    const display = snomedDisplay(id);
    return {
      system: SNOMED,
      ...(typeof policy === 'object' && { version: policy.licensed.edition }),
      code: id,
      ...(display !== undefined && { display }),
    };
  };

  const mapped = (maps: readonly Mapping[] | undefined, strict = false): Coding[] =>
    mappingsBeside(maps, strict).flatMap((map) => {
      if (map.system === 'loinc') return [loincCoding(map.code)];
      const coding = snomed(map.code);
      return coding === undefined ? [] : [coding];
    });

  const entryOf = (table: TableName, exported: string): AdopterEntry | undefined =>
    codes?.entries.get(`${table}|${exported}`);

  const leaves = ({ system: of, code }: AdopterCoding): boolean =>
    standardSystem(of) !== 'snomed' || snomedMayLeave(policy, code, freeSet);

  const fromMap = (entry: AdopterEntry | undefined, strict = false, unit?: string): Coding[] =>
    mappingsBeside(entry?.codings, strict)
      .filter((coding) => coding.unit === unit && leaves(coding))
      .map(({ relation: _, unit: _unit, ...coding }) => coding);

  /** Codings beside our own: the built-in ones that the adopter's map leaves, then those of the map. */
  const beside = (
    entry: AdopterEntry | undefined,
    maps: readonly Mapping[] | undefined,
    strict = false,
  ): Coding[] => {
    if (entry === undefined) return mapped(maps, strict);
    const kept = maps?.filter((map) => !entry.replaces.has(standardSystems[map.system]));
    return distinct([...mapped(kept, strict), ...fromMap(entry, strict)]);
  };

  const made = (table: TableName, code: string, strict: boolean): readonly Coding[] => {
    const row = catalogue[table].get(code);
    if (row === undefined) throw new Error(`the table ${table} lost a row that an exam names`);
    return [
      { system: system(table, code), code, display: row.display },
      ...beside(entryOf(table, code), row.maps, strict),
    ];
  };

  const codings = (table: TableName, code: string, strict = false): Coding[] => {
    const tables = strict ? known.strict : known.loose;
    let rows = tables.get(table);
    if (rows === undefined) {
      rows = new Map();
      tables.set(table, rows);
    }
    let list = rows.get(code);
    if (list === undefined) {
      list = made(table, code, strict);
      rows.set(code, list);
    }
    return list.map(copy);
  };

  const display = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.display ?? code;

  return {
    codings,
    display,
    snomed,
    concept: (table, code, text) => ({
      coding: codings(table, code),
      text: text ?? display(table, code),
    }),
    strictConcept: (table, code) => ({
      coding: codings(table, code, true),
      text: display(table, code),
    }),
    valueConcept: (table, code, value) => ({
      coding: [
        { system: system(table, code), code: `${code}.${value.code}`, display: value.display },
        ...beside(entryOf(table, `${code}.${value.code}`), value.maps),
      ],
      text: value.display,
    }),
    fromCaller: (given) =>
      given === undefined
        ? []
        : given
            .filter((coding) => callerCodingLeaves(coding, rules))
            .map(({ system, version, code, display }) => ({
              system,
              ...(version !== undefined && { version }),
              code,
              ...(display !== undefined && { display }),
            })),
    besideSide: (region, sided, strict) => {
      const [, ...ofRegion] = codings('regions', region, strict);
      const entry = entryOf('regions', sided);
      if (entry === undefined) return ofRegion;
      const kept = ofRegion.filter(({ system: of = '' }) => !entry.replaces.has(of));
      return distinct([...fromMap(entry, strict), ...kept]);
    },
    unitCodings: (measure, unit, strict) => fromMap(entryOf('measures', measure), strict, unit),
  };
}

/** Each resource gets its own objects, so that a caller can change one without changing another. */
function copy(coding: Coding): Coding {
  return { ...coding };
}

/** A map may add what is there already. */
function distinct(list: readonly Coding[]): Coding[] {
  const seen = new Set<string>();
  return list.filter(({ system, code }) => {
    const name = `${system}|${code}`;
    const first = !seen.has(name);
    seen.add(name);
    return first;
  });
}

function loincCoding(code: string): Coding {
  const display = loincDisplay(code);
  return { system: LOINC, code, ...(display !== undefined && { display }) };
}
