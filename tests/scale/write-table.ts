/** Writes a table to convert on many machines: npx tsx tests/scale/write-table.ts ROWS FILE */
import { writeTable } from './table.ts';

const [count, file] = process.argv.slice(2);
if (file === undefined || !/^\d+$/.test(count ?? '')) {
  throw new TypeError('cannot write a table: expected a number of rows and a file');
}
await writeTable(file, Number(count));
