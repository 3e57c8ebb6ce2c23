import { type Kind, type Shape, tableShapes } from './terminology-shape.ts';

export type Row = { readonly [property: string]: unknown };
export interface TableFile {
  readonly table: string;
  readonly title: string;
  readonly version: string;
  readonly licence: string;
  readonly concepts: readonly Row[];
}
export type Tables = { readonly [table: string]: TableFile };

const headProperties = ['table', 'title', 'version', 'licence', 'concepts'];
const evidence = ['read', 'second-hand', 'memory', 'common-practice'];
const relations = ['equivalent', 'wider', 'narrower', 'relatedto'];
const dataAbsentReasons = 'http://terminology.hl7.org/CodeSystem/data-absent-reason';

/** Everything wrong with the tables, one line each; empty when they are sound. */
export function tableFaults(tables: Tables): string[] {
  const faults: string[] = [];
  for (const [name, { shape }] of Object.entries(tableShapes)) {
    const file = tables[name];
    if (file === undefined) {
      faults.push(`${name}: the file is missing`);
      continue;
    }
    for (const property of Object.keys(file)) {
      if (!headProperties.includes(property)) faults.push(`${name}: unknown property ${property}`);
    }
    if (file.table !== name) faults.push(`${name}: its head names another table`);
    for (const row of file.concepts) faults.push(...shapeFaults(row, shape, `${name} ${key(row)}`));
    faults.push(...duplicates(file.concepts.map(key), name));
  }
  return faults.length > 0 ? faults : [...referenceFaults(tables), ...meaningFaults(tables)];
}

/** Code that a row is looked up by; HL7 codes are unique within their system only. */
function key(row: Row): string {
  return [row.system, row.code ?? row.id].filter((part) => part !== undefined).join(' ');
}

function duplicates(keys: readonly string[], where: string): string[] {
  const twice = keys.filter((code, at) => keys.indexOf(code) !== at);
  return twice.map((code) => `${where}: ${code} stands twice`);
}

function shapeFaults(row: Row, shape: Shape, where: string): string[] {
  const faults: string[] = [];
  const kinds = new Map(Object.entries(shape).map(([name, kind]) => [name.replace('?', ''), kind]));
  for (const name of Object.keys(row)) {
    if (!kinds.has(name)) faults.push(`${where}: unknown property ${name}`);
  }
  for (const [name, kind] of kinds) {
    const value = row[name];
    if (value === undefined) {
      if (Object.hasOwn(shape, name)) faults.push(`${where}: ${name} is missing`);
    } else {
      faults.push(...kindFaults(value, kind, `${where}.${name}`));
    }
  }
  return faults;
}

function kindFaults(value: unknown, kind: Kind, where: string): string[] {
  if (typeof kind === 'object') {
    if (!Array.isArray(value)) return [`${where}: expected a list`];
    const rows: Row[] = value;
    const codes = rows.map((row) => row.code).filter((code) => typeof code === 'string');
    const named = 'relation' in kind ? [] : duplicates(codes, where);
    return [...rows.flatMap((row, at) => shapeFaults(row, kind, `${where}[${at}]`)), ...named];
  }
  const sound: { readonly [simple in Exclude<Kind, Shape>]: () => boolean } = {
    text: () => isText(value),
    texts: () =>
      Array.isArray(value) && value.every(isText) && new Set(value).size === value.length,
    true: () => value === true,
    integer: () => Number.isInteger(value),
    decimal: () => typeof value === 'string' && /^-?\d+(\.\d+)?$/.test(value),
    evidence: () => evidence.includes(String(value)),
  };
  return sound[kind]() ? [] : [`${where}: expected ${kind}`];
}

function isText(value: unknown): boolean {
  return typeof value === 'string' && value.trim() === value && value !== '';
}

/** All texts at a path such as `entries.regions`, lists opened. */
export function textsAt(row: unknown, path: string): string[] {
  let found: unknown[] = [row];
  for (const step of path.split('.')) {
    found = found.flatMap((item) => {
      const value = (item as Row)[step]; // shapes were checked before
      return value === undefined ? [] : value;
    });
  }
  return found.map(String);
}

export function rows(tables: Tables, table: string): readonly Row[] {
  return tables[table]?.concepts ?? [];
}

/** Every mapping of a table, wherever it stands in a row. */
export function mappings(value: unknown): { system: string; code: string; relation: string }[] {
  if (Array.isArray(value)) return value.flatMap(mappings);
  if (typeof value !== 'object' || value === null) return [];
  const row = value as Row; // a JSON object
  if (typeof row.relation === 'string') {
    return [{ system: String(row.system), code: String(row.code), relation: row.relation }];
  }
  return Object.values(row).flatMap(mappings);
}

function codesOf(tables: Tables, table: string): ReadonlySet<string> {
  return new Set(rows(tables, table).map((row) => String(row.code ?? row.id)));
}

function referenceFaults(tables: Tables): string[] {
  return Object.entries(tableShapes).flatMap(([name, { references = [] }]) => [
    ...references.flatMap(([path, target]) => dangling(tables, name, path, target)),
    ...mappingFaults(tables, name),
  ]);
}

function dangling(tables: Tables, name: string, path: string, target: string): string[] {
  const known = codesOf(tables, target);
  return rows(tables, name).flatMap((row) =>
    textsAt(row, path)
      .filter((code) => !known.has(code))
      .map((code) => `${name} ${key(row)}.${path}: no ${code} in ${target}`),
  );
}

function mappingFaults(tables: Tables, name: string): string[] {
  const faults: string[] = [];
  for (const { system, code, relation } of mappings(rows(tables, name))) {
    if (!codesOf(tables, system).has(code)) faults.push(`${name}: no ${code} in ${system}`);
    if (!relations.includes(relation)) faults.push(`${name}: unknown relation ${relation}`);
  }
  return faults;
}

/** What shapes and references cannot say. */
function meaningFaults(tables: Tables): string[] {
  return [
    ...findingFaults(tables),
    ...testPointFaults(tables),
    ...reasonFaults(tables),
    ...protocolFaults(tables),
    ...treeFaults(tables),
  ];
}

function findingFaults(tables: Tables): string[] {
  const faults: string[] = [];
  const families = new Set(rows(tables, 'attributes').map((row) => row.family));
  for (const row of rows(tables, 'findings')) {
    const [head, tail] = key(row).split('.');
    if (row.feature !== (tail === undefined ? undefined : head)) {
      faults.push(`findings ${key(row)}: the feature is the code before its dot`);
    }
    if (row.attributes !== undefined && !families.has(row.attributes)) {
      faults.push(`findings ${key(row)}: no attribute of the family ${String(row.attributes)}`);
    }
  }
  return faults;
}

function testPointFaults(tables: Tables): string[] {
  return rows(tables, 'test-points').flatMap((row) => {
    const [own, other] =
      row.group === 'sensation' ? ['modalities', 'results'] : ['results', 'modalities'];
    if (row[own] !== undefined && row[other] === undefined) return [];
    return [`test-points ${key(row)}: takes ${own} and no ${other}`];
  });
}

function reasonFaults(tables: Tables): string[] {
  const known = new Set(rows(tables, 'hl7').map(key));
  return rows(tables, 'reasons')
    .filter((row) => !known.has(`${dataAbsentReasons} ${String(row.dataAbsentReason)}`))
    .map((row) => `reasons ${key(row)}: unknown dataAbsentReason`);
}

function protocolFaults(tables: Tables): string[] {
  const methods = new Map(
    rows(tables, 'regions').map((row) => [key(row), textsAt(row, 'methods')]),
  );
  return rows(tables, 'protocols').flatMap((protocol) => {
    const uses = protocol.regions as readonly Row[]; // its shape was checked before
    return uses.flatMap((use) =>
      textsAt(use, 'methods')
        .filter((method) => !methods.get(String(use.region))?.includes(method))
        .map((method) => `protocols ${key(protocol)}: ${String(use.region)} takes no ${method}`),
    );
  });
}

function treeFaults(tables: Tables): string[] {
  const parents = new Map(rows(tables, 'regions').map((row) => [key(row), row.parent]));
  return [...parents.keys()].flatMap((code) => {
    const seen = new Set<unknown>();
    for (let at: unknown = code; at !== undefined; at = parents.get(String(at))) {
      if (seen.has(at)) return [`regions ${code}: its parents go round in a circle`];
      seen.add(at);
    }
    return [];
  });
}
