import { expect, it } from 'vitest';
import { csvReader } from '../../../src/convert/csv/reader.ts';

const PIECE = 65_536;
const GIGABYTE = 1_073_741_824;

/** Rows of 64 characters. */
const rows = `${'1234567,'.repeat(7)}1234567\n`.repeat(PIECE / 64);

it('a quote that is not closed over a gigabyte costs one row, in bounded memory', () => {
  const splitter = csvReader({ syntax: 'csv' }).splitter();
  const heading = 'a,b,c,d,e,f,g,h\n';
  let faults = 0;
  let units = 0;
  let most = 0;
  const take = (found: ReturnType<typeof splitter.push>): void => {
    units += found.length;
    faults += found.filter(({ issues }) => issues !== undefined).length;
  };
  take(splitter.push(`${heading}"open,b,c,d,e,f,g,h\n`));
  const before = process.memoryUsage().heapUsed;
  for (let done = 0; done < GIGABYTE; done += PIECE) {
    take(splitter.push(rows));
    if (done % (PIECE * 256) === 0) most = Math.max(most, process.memoryUsage().heapUsed - before);
  }
  take([...splitter.end()]);
  expect(faults).toBe(1);
  expect(units).toBe(GIGABYTE / 64 + 1);
  expect(most).toBeLessThan(256 * 1024 * 1024);
});
