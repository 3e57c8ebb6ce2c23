import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/**
 * Writes terminology/units.json and src/terminology/tables/units.ts: the UCUM units that exams use,
 * each with its exact factor to one base unit of its kind. The factors are worked out with whole
 * numbers from the definitions in the UCUM data of @lhncbc/ucum-lhc, never from its rounded floats.
 */
const project = fileURLToPath(new URL('../../../', import.meta.url));

/** Units by kind; the first of each is the base, so its factor is 1. */
const kinds: Readonly<Record<string, readonly string[]>> = {
  length: ['mm', 'um', 'cm', 'm', '[in_i]'],
  area: ['mm2', 'cm2'],
  time: ['s', 'ms', 'min', 'h', 'd', 'wk', 'mo', 'a'],
  angle: ['deg'],
  flow: ['L/min', 'L/s', 'mL/min', 'mL/s'],
  number: ['1', '%', '{#}', '{score}', '{grade}'],
};

/** A quotient of whole numbers times powers of the base dimensions. */
interface Term {
  readonly top: bigint;
  readonly bottom: bigint;
  readonly powers: Readonly<Record<string, number>>;
}

interface Definition {
  readonly unit: string | null;
  readonly factor: string | null;
  readonly metric: boolean;
  /** Size in base units as a rounded float: only to prove the exact factor. */
  readonly magnitude: number;
  /** Set for units that UCUM defines, and not for prefixed ones that the data lists for convenience. */
  readonly defined: boolean;
}

const one: Term = { top: 1n, bottom: 1n, powers: {} };

async function definitions(): Promise<{
  version: string;
  units: Map<string, Definition>;
  prefixes: Map<string, number>;
  names: Map<string, string>;
}> {
  const folder = `${project}node_modules/@lhncbc/ucum-lhc/`;
  const { version } = JSON.parse(await readFile(`${folder}package.json`, 'utf8'));
  const data = JSON.parse(await readFile(`${folder}data/ucumDefs.min.json`, 'utf8'));
  const columns: unknown[] = data.units.config;
  const at = (name: string): number => columns.indexOf(name);
  const rows: unknown[][] = data.units.data;
  const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);
  const units = new Map<string, Definition>();
  const names = new Map<string, string>();
  for (const row of rows) {
    const code = String(row[at('csCode_')]);
    names.set(code, String(row[at('name_')]));
    units.set(code, {
      unit: text(row[at('csUnitString_')]),
      factor: text(row[at('baseFactorStr_')]),
      metric: row[at('isMetric_')] === true,
      magnitude: Number(row[at('magnitude_')]),
      defined: row[at('source_')] === 'UCUM',
    });
  }
  const prefixRows: string[][] = data.prefixes.data;
  const prefixes = new Map<string, number>();
  for (const row of prefixRows) {
    if (row[5] !== null) prefixes.set(String(row[0]), Number(row[5]));
  }
  return { version, units, prefixes, names };
}

const { version, units, prefixes, names } = await definitions();

/** Base dimensions: what UCUM defines by itself, and the degree, whose definition holds pi. */
const bases = new Set(['m', 's', 'deg']);

/** `cm`, `mm2`, `L/min`: an expression of the few forms that the list above needs. */
function expression(text: string): Term {
  let result = one;
  for (const [, operator, part] of text.matchAll(/(^|[./])([^./]+)/g)) {
    const term = annotated(part ?? '');
    result = combine(result, term, operator === '/' ? -1 : 1);
  }
  return result;
}

function annotated(text: string): Term {
  if (/^\{[^}]*\}$/.test(text)) return one;
  if (/^\d+$/.test(text)) return number(text);
  const tenth = /^10\*(-?\d+)$/.exec(text);
  if (tenth !== null) return powerOfTen(Number(tenth[1]));
  const found = /^([^\d]+?|\[[^\]]+\])(\d*)$/.exec(text);
  if (found === null) throw new Error(`cannot read the unit ${text}`);
  const [, symbol = '', exponent] = found;
  const term = single(symbol);
  let result = one;
  for (let count = 0; count < Number(exponent || '1'); count += 1)
    result = combine(result, term, 1);
  return result;
}

function single(symbol: string): Term {
  if (bases.has(symbol)) return { top: 1n, bottom: 1n, powers: { [symbol]: 1 } };
  const known = units.get(symbol);
  if (known?.defined && known.unit && known.factor) {
    return combine(number(known.factor), expression(known.unit), 1);
  }
  for (const [prefix, power] of prefixes) {
    const rest = symbol.slice(prefix.length);
    if (symbol.startsWith(prefix) && (bases.has(rest) || units.get(rest)?.metric)) {
      return combine(powerOfTen(power), single(rest), 1);
    }
  }
  throw new Error(`no definition of the unit ${symbol}`);
}

function number(text: string): Term {
  const [mantissa = '', power = '0'] = text.toLowerCase().split('e');
  const [whole = '', fraction = ''] = mantissa.split('.');
  return combine(
    { top: BigInt(whole + fraction), bottom: 1n, powers: {} },
    powerOfTen(Number(power) - fraction.length),
    1,
  );
}

function powerOfTen(power: number): Term {
  const value = 10n ** BigInt(Math.abs(power));
  return power < 0
    ? { top: 1n, bottom: value, powers: {} }
    : { top: value, bottom: 1n, powers: {} };
}

function combine(a: Term, b: Term, sign: 1 | -1): Term {
  const powers: Record<string, number> = { ...a.powers };
  for (const [base, power] of Object.entries(b.powers)) {
    powers[base] = (powers[base] ?? 0) + sign * power;
  }
  return sign === 1
    ? { top: a.top * b.top, bottom: a.bottom * b.bottom, powers }
    : { top: a.top * b.bottom, bottom: a.bottom * b.top, powers };
}

/** `(top / bottom)` as a decimal; an error when it has no end, because the table holds exact factors. */
function decimal(top: bigint, bottom: bigint): string {
  for (let places = 0; places <= 18; places += 1) {
    const scaled = top * 10n ** BigInt(places);
    if (scaled % bottom !== 0n) continue;
    const digits = String(scaled / bottom).padStart(places + 1, '0');
    const whole = digits.slice(0, digits.length - places);
    return places === 0 ? whole : `${whole}.${digits.slice(digits.length - places)}`;
  }
  throw new Error(`the factor ${top}/${bottom} has no exact decimal`);
}

function samePowers(a: Term, b: Term): boolean {
  const bare = (term: Term): string =>
    JSON.stringify(
      Object.entries(term.powers)
        .filter(([, power]) => power !== 0)
        .sort(),
    );
  return bare(a) === bare(b);
}

/** Holds the exact value to the float of the data, where the data lists the unit as such. */
function proveMagnitude(code: string, term: Term): void {
  const known = units.get(code);
  if (known === undefined || bases.has(code)) return;
  const value = Number(term.top) / Number(term.bottom);
  if (Math.abs(value / known.magnitude - 1) > 1e-12) {
    throw new Error(`${code}: ${value} is not the ${known.magnitude} of the data`);
  }
}

const rows = Object.entries(kinds).flatMap(([kind, codes]) => {
  const base = expression(codes[0] ?? '');
  return codes.map((code) => {
    const term = expression(code);
    if (!samePowers(base, term)) throw new Error(`${code} is not a unit of ${kind}`);
    proveMagnitude(code, term);
    return {
      code,
      display: names.get(code) || code,
      kind,
      base: codes[0] ?? '',
      factor: decimal(term.top * base.bottom, term.bottom * base.top),
    };
  });
});

const source = `UCUM definitions in the data of @lhncbc/ucum-lhc ${version}`;
const table = {
  table: 'units',
  title: 'UCUM units of the exam, with exact factors to one base unit of each kind',
  version,
  licence:
    'UCUM copyright Regenstrief Institute; codes free to use under the UCUM licence with this notice',
  source,
  concepts: rows,
};
await writeFile(`${project}terminology/units.json`, `${JSON.stringify(table, null, 2)}\n`);
await writeFile(
  `${project}src/terminology/tables/units.ts`,
  [
    '// Generated by src/generate/terminology/units.ts from terminology/units.json. Do not edit.',
    '',
    '/** A UCUM unit; a value in it times `factor` is the value in the unit `base`. */',
    'export interface Unit {',
    '  readonly code: string;',
    '  readonly display: string;',
    "  readonly kind: 'length' | 'area' | 'time' | 'angle' | 'flow' | 'number';",
    '  readonly base: string;',
    '  readonly factor: string;',
    '}',
    '',
    'export const units: readonly Unit[] = [',
    ...rows.map((row) => `  ${JSON.stringify(row)},`),
    '];',
    '',
  ].join('\n'),
);
