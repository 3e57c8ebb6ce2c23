import { once } from 'node:events';
import { createWriteStream, readFileSync } from 'node:fs';
import { join } from 'node:path';

const example = join(import.meta.dirname, '../../examples/convert');
export const mapping: string = join(example, 'vineyard.mapping.json');
const [heading = '', ...rows] = readFileSync(join(example, 'vineyard.csv'), 'utf8')
  .trimEnd()
  .split('\n');
const isBad = (row: string): boolean => /^K-10[45];/.test(row);
const good = rows.filter((row) => !isBad(row));
const bad = rows.filter(isBad);

/** One row in so many cannot become an exam. */
const BAD = 50;

export const header: readonly string[] = heading.split(';');

/** A row of the table, each with an exam number of its own, from 1. */
export function rowAt(number: number): string {
  const some = number % BAD === 0 ? bad : good;
  return (some[number % some.length] ?? '').replace(/^K-\d+/, `K-${number}`);
}

/** The vineyard's table with so many rows, as a file. */
export async function writeTable(file: string, count: number): Promise<void> {
  const stream = createWriteStream(file);
  stream.write(`${heading}\n`);
  for (let number = 1; number <= count; number++) {
    if (!stream.write(`${rowAt(number)}\n`)) await once(stream, 'drain');
  }
  stream.end();
  await once(stream, 'finish');
}
