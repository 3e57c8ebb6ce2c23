import type {
  CodeSystemTable,
  CodeTable,
  ExtensionPart,
  ExtensionTable,
  TypeTable,
  ValueSetTable,
} from '../../validate/elements/table-types.ts';
import { type Definitions, structureUrl, withoutVersion } from './definitions.ts';
import { allConcepts, type Expansion, expand } from './value-sets.ts';

/** Larger systems and value sets are left to a terminology server; DICOM's has some 3,000 codes. */
const mostCodes = 1500;
const mostMembers = 400;

/** Of larger systems only the codes in the value sets of elements keep their displays. */
const mostDisplays = 1000;

/** A longer text describes the code, and nobody would send it as display. */
const longestDisplay = 120;

/**
 * Systems that only an example binding reaches and that would be a sixth of all tables: races, and
 * messages of operations in a dozen languages.
 */
const leftOut: ReadonlySet<string> = new Set([
  'http://terminology.hl7.org/CodeSystem/v3-Race',
  'http://terminology.hl7.org/CodeSystem/operation-outcome',
  'http://hl7.org/fhir/operation-outcome',
]);

/** No binding reaches it, since any unit may stand in a quantity; HL7's examples of doses are full of it. */
const unitsOfDoses = 'http://terminology.hl7.org/CodeSystem/v3-orderableDrugForm';

/** HL7 only recommends these; our profiles require them. */
const requiredByProfiles = ['http://hl7.org/fhir/ValueSet/observation-category'];

/** HL7's terminology is published apart from FHIR and holds for all its versions. */
const terminologyBase = 'http://terminology.hl7.org/';

export interface CodeTables {
  /** Systems of the version itself. */
  readonly own: CodeSystemTable;
  /** Systems of HL7's terminology. */
  readonly terminology: CodeSystemTable;
  readonly valueSets: ValueSetTable;
}

/** The value sets that the tables name, and every complete code system that a binding reaches. */
export function codeTables(
  definitions: Definitions,
  types: TypeTable,
  extensions: ExtensionTable,
): CodeTables {
  const systems = new Set(reachedSystems(definitions, types));
  const named = new Set([...namedValueSets(types, extensions), ...requiredByProfiles]);
  if (Object.hasOwn(types, 'MedicationRequest')) {
    systems.add(unitsOfDoses);
    for (const system of systemsOfExtensions(definitions)) systems.add(system);
  }
  if (Object.hasOwn(types, 'ConceptMap')) {
    for (const system of systemsOfMaps(definitions)) systems.add(system);
    for (const url of valueSetsOfMaps(definitions)) named.add(url);
  }
  const valueSets: Record<string, Record<string, 'all' | string[]>> = {};
  for (const url of named) {
    const found = expand(url, definitions);
    if (found === undefined || size(found, definitions) > mostMembers) continue;
    for (const system of found.keys()) systems.add(system);
    valueSets[url] = compact(found, definitions);
  }
  const tables = [...systems].sort().flatMap((url): [string, CodeTable][] => {
    const codes = codesOf(url, definitions);
    const count = Object.keys(codes ?? {}).length;
    if (codes === undefined || count > mostCodes) return [];
    return [[url, count > mostDisplays ? withFewDisplays(url, codes, valueSets) : codes]];
  });
  const isTerminology = ([url]: [string, CodeTable]) => url.startsWith(terminologyBase);
  return {
    own: Object.fromEntries(tables.filter((row) => !isTerminology(row))),
    terminology: Object.fromEntries(tables.filter(isTerminology)),
    valueSets: Object.fromEntries(Object.entries(valueSets).sort(([a], [b]) => (a < b ? -1 : 1))),
  };
}

function withFewDisplays(system: string, codes: CodeTable, valueSets: ValueSetTable): CodeTable {
  const members = new Set(Object.values(valueSets).flatMap((systems) => systems[system] ?? []));
  return Object.fromEntries(
    Object.entries(codes).map(([code, display]) => [code, members.has(code) ? display : '']),
  );
}

function namedValueSets(types: TypeTable, extensions: ExtensionTable): Set<string> {
  const found = new Set<string>();
  for (const { elements } of Object.values(types)) {
    for (const row of Object.values(elements)) {
      if (typeof row === 'string') continue;
      for (const url of [row.codes, row.usualCodes, row.outerCodes]) {
        if (url !== undefined) found.add(url);
      }
    }
  }
  const ofParts = (parts: Readonly<Record<string, ExtensionPart>> = {}): void => {
    for (const { codes, parts: inner } of Object.values(parts)) {
      if (codes !== undefined) found.add(codes);
      ofParts(inner);
    }
  };
  for (const { codes, parts } of Object.values(extensions)) {
    if (codes !== undefined) found.add(codes);
    ofParts(parts);
  }
  return found;
}

/** Systems that any binding of the held types reaches, however weak it is. */
function reachedSystems(definitions: Definitions, types: TypeTable): string[] {
  const found = new Set<string>();
  for (const type of Object.keys(types)) {
    const elements = definitions.structures.get(structureUrl(type))?.snapshot.element ?? [];
    for (const { binding } of elements) {
      if (binding?.valueSet === undefined) continue;
      for (const system of systemsOf(withoutVersion(binding.valueSet), definitions, new Set())) {
        found.add(system);
      }
    }
  }
  return [...found];
}

/** Systems of FHIR itself that the value of any published extension is bound to, however weakly. */
function systemsOfExtensions(definitions: Definitions): string[] {
  const found = new Set<string>();
  for (const { type, derivation, snapshot } of definitions.structures.values()) {
    if (type !== 'Extension' || derivation !== 'constraint') continue;
    for (const { binding } of snapshot?.element ?? []) {
      if (binding?.valueSet === undefined) continue;
      for (const system of systemsOf(withoutVersion(binding.valueSet), definitions, new Set())) {
        if (system.startsWith('http://hl7.org/fhir/')) found.add(system);
      }
    }
  }
  return [...found];
}

/** Every system of FHIR itself, and those of HL7's terminology that a published map leads from or to. */
function systemsOfMaps({ codeSystems, conceptMaps }: Definitions): string[] {
  const own = [...codeSystems.keys()].filter((url) => url.startsWith('http://hl7.org/fhir/'));
  const groups = conceptMaps.flatMap(({ group = [] }) => group);
  const mapped = groups.flatMap(({ source, target }) => [source, target]);
  return [...own, ...mapped.filter((url) => url !== undefined)];
}

/** What published maps lead from and to. */
function valueSetsOfMaps({ conceptMaps }: Definitions): string[] {
  const named = conceptMaps.flatMap((map) => [
    ...[map.sourceCanonical, map.targetCanonical],
    ...[map.sourceScopeCanonical, map.targetScopeCanonical],
  ]);
  return named.filter((url) => url !== undefined).map(withoutVersion);
}

function systemsOf(url: string, definitions: Definitions, seen: Set<string>): string[] {
  if (seen.has(url)) return [];
  seen.add(url);
  const include = definitions.valueSets.get(url)?.compose?.include ?? [];
  return include.flatMap(({ system, valueSet = [] }) => [
    ...(system === undefined ? [] : [system]),
    ...valueSet.flatMap((inner) => systemsOf(withoutVersion(inner), definitions, seen)),
  ]);
}

/**
 * Codes of a complete system, with those of every edition: a code that was taken out later is still
 * one of its codes, and so is one that came later.
 */
function codesOf(url: string, { codeSystems }: Definitions): CodeTable | undefined {
  const editions = leftOut.has(url) ? [] : (codeSystems.get(url) ?? []);
  if (editions.length === 0 || editions.some(({ content }) => content !== 'complete')) {
    return undefined;
  }
  const displays = new Map<string, Set<string>>();
  for (const { concept = [] } of editions) {
    for (const { code, display, designation = [] } of allConcepts(concept)) {
      const known = displays.get(code) ?? new Set();
      for (const text of [display, ...designation.map(({ value }) => value)]) {
        if (text !== undefined && text.length <= longestDisplay) known.add(text);
      }
      displays.set(code, known);
    }
  }
  if (displays.size === 0) return undefined;
  const rows = [...displays].map(([code, known]): [string, string | string[]] => {
    const [first = ''] = known;
    return [code, known.size > 1 ? [...known] : first];
  });
  return Object.fromEntries(rows);
}

function size(found: Expansion, definitions: Definitions): number {
  return [...found].reduce(
    (sum, [system, codes]) =>
      sum + (codes === 'all' ? Object.keys(codesOf(system, definitions) ?? {}).length : codes.size),
    0,
  );
}

/** Codes by system; `all` where every code of a system that is held is in it. */
export function compact(
  found: Expansion,
  definitions: Definitions,
): Record<string, 'all' | string[]> {
  return Object.fromEntries(
    [...found].map(([system, codes]) => {
      const all = Object.keys(codesOf(system, definitions) ?? {});
      if (codes === 'all') return [system, 'all'];
      const whole =
        all.length > 0 && all.length <= mostCodes && all.every((code) => codes.has(code));
      return [system, whole ? 'all' : [...codes].sort()];
    }),
  );
}
