import type { Messy } from '../messy.ts';
import { type Random, seeded } from '../random.ts';

/** Yearly checks of harbour workers, with the defects that old interfaces send. */
export function messyMessages(seed: number, count: number): Messy {
  const random = seeded(seed);
  const marks: string[] = [];
  const end = random.pick(['\r', '\n', '\r\n'] as const);
  let units = 0;
  let text = '';
  for (let number = 1; number <= count; number++) {
    if (random.chance(0.02)) {
      const mark = `stray-${number}`;
      // After a message a stray line is taken as cut off from its last field; before the first it is alone.
      if (number === 1) units += 1;
      text += `${mark}${end}`;
      marks.push(mark);
    }
    units += 1;
    const lines = message(number, random, marks);
    const body = lines.map((line) => line + end).join('');
    text += random.chance(0.2) ? `\x0b${body}\x1c${end}` : body;
  }
  return { text, units, marks };
}

function message(number: number, random: Random, marks: string[]): string[] {
  const lines = [header(number, random), patient(number, random), order(number, random)];
  if (random.chance(0.02)) lines.splice(1, 1);
  if (random.chance(0.02)) lines.push(patient(number + 1, random));
  const observations = 3 + random.below(20);
  for (let set = 1; set <= observations; set++) {
    lines.push(...observation(`${number}-${set}`, set, random, marks));
  }
  if (random.chance(0.1)) lines.push(`ZHB|berth ${number}`);
  return lines;
}

function header(number: number, random: Random): string {
  const delimiters = random.chance(0.02) ? '^^\\&' : '^~\\&';
  const type = random.chance(0.02) ? 'ADT^A04' : 'ORU^R01^ORU_R01';
  const processing = random.chance(0.02) ? 'T' : 'P';
  const version = random.pick(['2.3', '2.4', '2.5.1', '2.6', '2.8'] as const);
  return `MSH|${delimiters}|EXAM|HARBOUR|EHR|HUB|20240401101500+0000||${type}|C${number}|${processing}|${version}`;
}

function patient(number: number, random: Random): string {
  const birth = random.pick(['19620320', '1962', '196203520', '', '19620231'] as const);
  return `PID|1||H-${number}^^^HARBOUR^MR||ROPE^ADA||${birth}|${random.pick(['F', 'M', 'X'] as const)}`;
}

function order(number: number, random: Random): string {
  const day = String(1 + random.below(28)).padStart(2, '0');
  const time = random.pick([
    `202403${day}0945`,
    `202403${day}`,
    `202403${day}094500+0100`,
    '',
  ] as const);
  const status = random.pick(['F', 'F', 'F', 'F', 'C', 'P', 'S'] as const);
  return `OBR|1||E-${number}|FNEX^Face and neck exam^99EXAM|||${time}${'|'.repeat(18)}${status}`;
}

type Item = readonly [
  type: string,
  code: string,
  values: readonly [string, ...string[]],
  unit: string,
];

const items: readonly [Item, ...Item[]] = [
  ['NM', 'MRD1', ['4', '4.5', '4,5', '+3', '~4', 'four', '', '""', '3~4'], 'mm'],
  ['SN', 'MRD1', ['^4', '>^5', '^1^-^2', '<>^3'], 'mm'],
  ['NM', 'MIO', ['42', '4.2', '35'], 'mm'],
  ['CWE', 'TM', ['N^normal^L', 'A', '', 'Q', '-'], ''],
  ['CE', 'CHEEK', ['N', 'A', '""'], ''],
  ['CWE', 'PTOSIS', ['P', 'A', '?', 'N/A'], ''],
  ['ST', 'TEMPLE', ['present', 'absent', 'NAD', 'WNL', 'no rash'], ''],
  ['CWE', 'V2', ['N', 'R', 'A', 'O'], ''],
  ['ST', 'SPLEEN', ['not felt'], ''],
  ['QQ', 'PTOSIS', ['P'], ''],
  ['ED', 'PHOTO', ['^image^jpeg^Base64^/9j/4AAQ'], ''],
];

function observation(id: string, set: number, random: Random, marks: string[]): string[] {
  if (random.chance(0.2)) return [remark(id, set, random, marks)];
  const [type, code, values, unit] = random.pick(items);
  const side = random.pick(['R', 'L', 'R', 'L', '', 'B', 'RE', 'X'] as const);
  const written = random.chance(0.1) ? '' : random.pick([unit, unit, unit, 'cm', 'inch'] as const);
  const status = random.pick([
    'F',
    'F',
    'F',
    'F',
    'F',
    'C',
    'N',
    'X',
    'D',
    'W',
    'P',
    '',
    'Z',
  ] as const);
  const line = `OBX|${set}|${type}|${code}^Item^99EXAM|${side}|${random.pick(values)}|${written}|||||${status}`;
  const lines = [random.chance(0.03) ? line.slice(0, random.below(line.length)) : line];
  if (random.chance(0.15)) {
    const mark = `comment-${id}`;
    marks.push(mark);
    lines.push(`NTE|1||${mark} \\T\\ more~second line`);
  }
  if (random.chance(0.03)) lines.push(lines[0] ?? line);
  return lines;
}

/** Free text with its escapes done well, badly or not at all. */
function remark(id: string, set: number, random: Random, marks: string[]): string {
  const mark = `remark-${id}`;
  marks.push(mark);
  const type = random.pick(['ST', 'TX', 'FT'] as const);
  const words = random.pick([
    'cheek \\T\\ chin',
    'cheek & chin ^ ~5 mm',
    'one\\.br\\two \\H\\three\\N\\',
    'C:\\exam\\photo',
    'na\\XEF\\ve \\Zq\\',
    'broken\rover two lines',
    'pipe | inside',
    '\u00e9\u00df \u{1f9ed}',
  ] as const);
  return `OBX|${set}|${type}|NOTE||${mark} ${words}||||||F`;
}
