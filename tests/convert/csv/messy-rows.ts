import type { Messy } from '../messy.ts';
import { type Random, seeded } from '../random.ts';

const heading = 'exam_no,worker_no,exam_date,MRD1_R,cheek_L,node_R,remark,hat';

/** Yearly checks of vineyard workers, one row each, with the defects of tables kept by hand. */
export function messyRows(seed: number, count: number): Messy {
  const random = seeded(seed);
  const marks: string[] = [];
  const ending = random.pick(['\r\n', '\n'] as const);
  const rows: string[] = [];
  for (let number = 1; number <= count; number++) {
    rows.push(row(number, ending, random, marks));
    // Rows without content are not exams.
    if (random.chance(0.03)) rows.push(random.pick([',,,,,,,', '', '  ,,'] as const));
  }
  const head = random.pick(['', '\uFEFF'] as const);
  const last = random.pick([ending, ''] as const);
  return { text: `${head}${[heading, ...rows].join(ending)}${last}`, units: count, marks };
}

function row(number: number, ending: string, random: Random, marks: string[]): string {
  const mark = `text-${number}`;
  marks.push(mark);
  const cells = [
    `X${number}`,
    random.pick(['V0001', 'V0417', 'V0417', 'V0417', '417', ''] as const),
    random.pick([
      '05/02/2024',
      '13/12/2023',
      '28/02/2024',
      '14/02/24',
      '02/14/2024',
      '2024-02-05',
    ] as const),
    random.pick([
      '4.5',
      '3',
      '"4,5"',
      '<2',
      'L 4',
      '4.5 cm',
      '45 inch',
      '02-Jan',
      '',
      'N/A',
    ] as const),
    random.pick(['WNL', 'abn', 'NAD', 'O', '-', ''] as const),
    random.pick(['+', '-ve', '?', '2', ''] as const),
    random.pick([
      mark,
      `"${mark}, dry"`,
      `"${mark} ""numb"""`,
      `"${mark}${ending}and more"`,
      `${mark} \u0007 caf\u00e9 \u{1f347}`,
    ] as const),
    random.pick(['', '', 'straw', '#REF!'] as const),
  ];
  return random.chance(0.06) ? broken(cells, random) : cells.join(',');
}

/** Faults that cost the row and no other. */
function broken(cells: readonly string[], random: Random): string {
  const flat = cells.map((cell) => cell.replace(/["\r\n]/g, ' ').replaceAll(',', ' '));
  switch (random.below(4)) {
    case 0:
      return flat.slice(1).join(',');
    case 1:
      return [...flat, 'more'].join(',');
    case 2:
      return [...flat.slice(0, 6), `${flat[6]} 5" long`, ...flat.slice(7)].join(',');
    default:
      return [...flat.slice(0, 3), '4', '5', ...flat.slice(4)].join(',');
  }
}
