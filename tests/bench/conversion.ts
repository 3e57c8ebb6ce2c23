import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';

const child = join(import.meta.dirname, 'convert-child.mjs');

interface Shape {
  readonly name: string;
  readonly mapping: string;
  readonly to: 'exams' | 'bundles';
  readonly heading: string;
  readonly row: (number: number) => string;
}

const sides = ['R', 'L'] as const;

const wide: Pick<Shape, 'heading' | 'row'> = {
  heading: 'exam_no,worker_no,exam_date,MRD1_R,cheek_L,node_R,remark',
  row: (number) => {
    const date = `${String(1 + (number % 28)).padStart(2, '0')}/02/2024`;
    const value = number % 17 === 3 ? '"4,5"' : `${2 + (number % 4)}.5`;
    const cheek = ['WNL', 'abn', '', 'NAD'][number % 4];
    const remark = number % 9 === 0 ? '"seen, at ""noon"""' : '';
    return `X${number},V${String(number % 10_000).padStart(4, '0')},${date},${value},${cheek},+,${remark}`;
  },
};

const shapes: readonly Shape[] = [
  {
    name: 'wide, a row an exam, to exams',
    mapping: 'wide.json',
    to: 'exams',
    ...wide,
  },
  {
    name: 'wide, a row an exam, to validated bundles',
    mapping: 'wide.json',
    to: 'bundles',
    ...wide,
  },
  {
    name: 'long, ten rows an exam, to validated bundles',
    mapping: 'long.json',
    to: 'bundles',
    heading: 'exam,badge,day,item,side,value,unit,method,note',
    row: (number) => {
      const exam = Math.floor(number / 10);
      const side = sides[number % 2];
      const items = [
        `MRD1,${side},4.5,mm,,`,
        `NODE2A,${side},-ve,,palp,`,
        `CHEEK,${side},WNL,,insp,`,
        `V2_SOFT,${side},n,,,`,
        `V2_SHARP,${side},red,,,"told, not shown"`,
      ];
      return `E${exam},B${exam % 1000},2024-02-05,${items[Math.floor((number % 10) / 2)]}`;
    },
  },
];

async function makeTable(folder: string, { heading, row }: Shape, rows: number): Promise<string> {
  const file = join(folder, 'table.csv');
  const stream = createWriteStream(file);
  stream.write(`${heading}\r\n`);
  for (let number = 0; number < rows; number += 1000) {
    const lines = Array.from({ length: Math.min(1000, rows - number) }, (_, at) =>
      row(number + at),
    );
    if (!stream.write(`${lines.join('\r\n')}\r\n`)) {
      await once(stream, 'drain');
    }
  }
  stream.end();
  await finished(stream);
  return file;
}

interface Measured {
  /** Of the processor, all threads. */
  readonly seconds: number;
  readonly megabytes: number;
}

/** How one shape of table was converted, beside csv-parse alone on the same file. */
export interface Conversion {
  readonly name: string;
  readonly rows: number;
  readonly convert: Measured;
  readonly parse: Measured;
}

function measure(...args: readonly string[]): Measured {
  const { stdout, stderr, status } = spawnSync(process.execPath, [child, ...args], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as Measured; // printed by the child
}

/**
 * Conversion of tables by the command line, with the library as built: memory, and processor time beside
 * csv-parse alone on the same file. Each measurement has a process of its own.
 */
export async function* measureConversion(sizes: readonly number[]): AsyncGenerator<Conversion> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  try {
    for (const shape of shapes) {
      for (const rows of sizes) {
        const file = await makeTable(folder, shape, rows);
        const parse = measure('parse', file);
        const out = join(folder, 'out');
        mkdirSync(out);
        const convert = measure('convert', file, out, shape.mapping, shape.to);
        rmSync(out, { recursive: true });
        yield { name: shape.name, rows, convert, parse };
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
