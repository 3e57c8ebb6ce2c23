import { type Content, element, joined } from '../../report/html.ts';
import { limitsOf, type Span } from '../../terminology/limits.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Laterality, Mapping } from '../../terminology/types.ts';
import { evidenceWords, freeSnomed, type Row, rowsOf } from './tables.ts';

/** One line of an entry: what it is called, and what is said. */
export type Fact = readonly [name: string, said: Content];

/** Anchor of a code: what a deep link names. */
export function anchorOf(table: string, code: string): string {
  return `${table}-${code}`;
}

export function link(table: string, code: string): Content {
  return element('a', { href: `#${anchorOf(table, code)}` }, code);
}

/** Tables that a member of a row points into; their codes become links. */
const pointers: readonly (readonly [member: string, name: string, table: string])[] = [
  ['parent', 'lies in', 'regions'],
  ['section', 'told under', 'sections'],
  ['region', 'region', 'regions'],
  ['regions', 'regions', 'regions'],
  ['methods', 'methods', 'methods'],
  ['method', 'method', 'methods'],
  ['modalities', 'modalities', 'modalities'],
  ['results', 'results', 'test-results'],
  ['points', 'points', 'test-points'],
  ['tests', 'tests', 'test-points'],
  ['measures', 'measures', 'measures'],
  ['scale', 'recorded as the scale', 'scales'],
  ['test', 'recorded as the test', 'test-points'],
  ['rangeOf', 'a range of', 'measures'],
  ['everyRegionBut', 'every region but', 'regions'],
];

/** Members that are said as they stand. */
const plain: readonly (readonly [member: string, name: string])[] = [
  ['definition', 'meaning'],
  ['version', 'version'],
  ['versions', 'versions'],
  ['innervation', 'sensory supply'],
  ['nerve', 'nerve'],
  ['instruction', 'what is asked'],
  ['feature', 'one of'],
  ['type', 'type'],
  ['family', 'family of attributes'],
  ['unit', 'unit'],
  ['units', 'further units'],
  ['max', 'greatest score'],
  ['threshold', 'threshold'],
  ['outside', 'left out on purpose'],
  ['dataAbsentReason', 'FHIR data-absent-reason'],
  ['licence', 'licence'],
];

const free = freeSnomed();
const attributes = rowsOf('attributes');

/** What the tables say of a row, in lines; nothing is said of it that they do not hold. */
export function factsOf(table: string, row: Row): readonly Fact[] {
  return [
    ...plain.flatMap(([member, name]) => lineOf(name, textOf(row[member]))),
    ...pointers.flatMap(([member, name, target]) => pointersOf(row[member], name, target)),
    ...sidesOf(row),
    ...(row['usual'] === true ? [['usual', 'the usual appearance, no abnormality'] as const] : []),
    ...(row['disorder'] === true
      ? [['disorder', 'names a disease: only where asserted'] as const]
      : []),
    ...(row['group'] === true
      ? [['group', 'holds regions and is not itself examined'] as const]
      : []),
    ...attributesOf(row),
    ...valuesOf(row),
    ...codesOf(row.maps ?? []),
    ...(table === 'measures' ? limitFacts(row) : []),
    ['source', `${row.source} (${evidenceWords[row.evidence]})`],
  ];
}

function lineOf(name: string, said: string): readonly Fact[] {
  return said === '' ? [] : [[name, said]];
}

function textOf(value: unknown): string {
  if (Array.isArray(value)) return value.filter((one) => typeof one === 'string').join('; ');
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

/** A code, several, or several with what is to be done at each. */
function pointersOf(value: unknown, name: string, table: string): readonly Fact[] {
  const codes = [value ?? []].flat().flatMap((one: unknown) => {
    if (typeof one === 'string') return [one];
    const { region, point }: { readonly region?: string; readonly point?: string } = one ?? {};
    return region ?? point ?? [];
  });
  if (codes.length === 0) return [];
  return [[name, codes.map((code, at) => [at === 0 ? '' : ', ', link(table, code)])]];
}

function sidesOf(row: Row): readonly Fact[] {
  if (row['laterality'] === undefined) return [];
  const { sides, required } = lateralitySides[row['laterality'] as Laterality];
  return [['sides', `${sides.join(', ')}${required ? ' (one must be said)' : ''}`]];
}

function attributesOf(row: Row): readonly Fact[] {
  const family = row['attributes'];
  if (typeof family !== 'string') return [];
  const own = attributes.filter((one) => one['family'] === family);
  return [
    ['attributes', own.map(({ code }, at) => [at === 0 ? '' : ', ', link('attributes', code)])],
  ];
}

interface Valued {
  readonly code: string;
  readonly display: string;
}

function valuesOf(row: Row): readonly Fact[] {
  const lists = ['values', 'grades', 'items'].flatMap((member) =>
    ((row[member] ?? []) as readonly Valued[]).map(({ code, display }) => `${code} (${display})`),
  );
  return lineOf('values', lists.join('; '));
}

function codesOf(maps: readonly Mapping[]): readonly Fact[] {
  return maps.map(({ system, code, relation }) => {
    if (system === 'loinc') return ['LOINC', `${code} (${relation})`];
    const name = free.get(code);
    return [
      'SNOMED CT',
      name === undefined ? 'an id outside the free set' : `${code} ${name} (${relation})`,
    ];
  });
}

function limitFacts({ code, unit, ...row }: Row): readonly Fact[] {
  const limits = limitsOf(code);
  const span = ({ low, high, source, evidence }: Span): string =>
    `${low} to ${high} ${unit} (${source}; ${evidenceWords[evidence]})`;
  const ranges = (row['ranges'] ?? []) as readonly {
    readonly low?: string;
    readonly high?: string;
    readonly text?: string;
    readonly population: string;
    readonly source: string;
  }[];
  return [
    ...(limits === undefined
      ? []
      : ([
          ['possible at all', span(limits.possible)],
          ['looked at twice outside', span(limits.usual)],
        ] as const)),
    ...ranges.map(
      ({ low, high, text, population, source }): Fact => [
        'reference range',
        joined(text ?? `${low ?? ''} to ${high ?? ''} ${unit}`, `; ${population}; ${source}`),
      ],
    ),
  ];
}
