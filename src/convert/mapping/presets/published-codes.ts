import { LOINC, SNOMED } from '../../../fhir/names/systems.ts';
import {
  answers,
  assertions,
  type PublishedCode,
  sideCodes,
} from '../../../read/foreign/published-codes.ts';
import type { TableName } from '../../../terminology/built-in.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import type { Mapping as CodeMapping } from '../../../terminology/types.ts';
import type { Target } from '../target.ts';

/** How a syntax names the code systems that others publish, by their canonical URIs. */
export type SystemNames = ReadonlyMap<string, string>;

interface Row {
  readonly code: string;
  readonly maps?: readonly CodeMapping[];
}

/** A code of a published system that means exactly one row of a table. */
interface Meant {
  readonly system: string;
  readonly code: string;
  readonly row: string;
}

/** Only equivalent codes count, and only those that mean one row: as the reader of bundles has it. */
function meantBy(table: TableName, catalogue: Catalogue): Meant[] {
  const rows: Iterable<Row> = catalogue[table].values();
  const found = new Map<string, Meant[]>();
  for (const { code: row, maps = [] } of rows) {
    for (const { system: short, code, relation } of maps) {
      if (relation !== 'equivalent') continue;
      const system = short === 'loinc' ? LOINC : SNOMED;
      const key = `${system}|${code}`;
      found.set(key, [...(found.get(key) ?? []), { system, code, row }]);
    }
  }
  return [...found.values()].flatMap((same) => (same.length === 1 ? same : []));
}

/** SNOMED CT codes of a table as words for its own codes. */
export function snomedWords(
  table: TableName,
  catalogue: Catalogue,
): { readonly [word: string]: string } {
  const meant = meantBy(table, catalogue).filter(({ system }) => system === SNOMED);
  return Object.fromEntries(meant.map(({ code, row }) => [code, row]));
}

/** SNOMED CT qualifiers of a site as words for sides. */
export function snomedSides(): { readonly [word: string]: string } {
  return wordsOf(sideCodes, SNOMED);
}

function wordsOf<M extends string>(
  list: readonly PublishedCode<M>[],
  system: string,
): { readonly [word: string]: M } {
  return Object.fromEntries(
    list.filter((row) => row.system === system).map(({ code, means }) => [code, means]),
  );
}

/** UCUM units of the catalogue, each as its own word. */
export function ucumUnits({ measures, attributes }: Catalogue): {
  readonly [word: string]: string;
} {
  const units = [...measures.values()].flatMap(({ unit, units: more = [] }) => [unit, ...more]);
  const own = [...attributes.values()].flatMap(({ unit }) => unit ?? []);
  return Object.fromEntries([...new Set([...units, ...own])].map((unit) => [unit, unit]));
}

/**
 * Targets of observations whose code, value or both are published codes of the tables. A key is the
 * system and code of the question and the system of the answer, as the syntax names them: an
 * assertion with a finding as its value, a finding with an answer, a measure with a number.
 */
export function codedTargets(names: SystemNames, catalogue: Catalogue): { [key: string]: Target } {
  const targets: { [key: string]: Target } = {};
  for (const [question, target] of asserted(catalogue, 'present', names))
    targets[question] = target;
  const answerSystems = [...new Set(answers.map(({ system }) => system))];
  for (const { system, code, row } of meantBy('findings', catalogue)) {
    for (const answerSystem of answerSystems) {
      const answerName = names.get(answerSystem);
      if (answerName === undefined) continue;
      targets[`${names.get(system)}|${code}|${answerName}`] = {
        kind: 'finding',
        finding: row,
        words: wordsOf(answers, answerSystem),
      };
    }
  }
  for (const { system, code, row } of meantBy('measures', catalogue)) {
    const measure = catalogue.measures.get(row);
    if (measure?.rangeOf !== undefined || measure?.scale !== undefined) continue;
    targets[`${names.get(system)}|${code}|`] = { kind: 'measurement', measure: row };
  }
  return targets;
}

/** The same for entries that say of a finding that it is not there. */
export function deniedTargets(names: SystemNames, catalogue: Catalogue): { [key: string]: Target } {
  return Object.fromEntries(asserted(catalogue, 'absent', names));
}

function asserted(
  catalogue: Catalogue,
  presence: 'present' | 'absent',
  names: SystemNames,
): [string, Target][] {
  const target: Target = { kind: 'finding', presence, words: snomedWords('findings', catalogue) };
  return assertions.flatMap(({ system, code }): [string, Target][] => {
    const name = names.get(system);
    return name === undefined ? [] : [[`${name}|${code}|${names.get(SNOMED)}`, target]];
  });
}
