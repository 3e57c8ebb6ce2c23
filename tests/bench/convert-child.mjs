// One measurement in a process of its own, so that its peak memory is its own.
import { createReadStream, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [, , what, file, out, mapping, to] = process.argv;
let start = performance.now();

if (what === 'parse') {
  const { parse } = await import('csv-parse');
  start = performance.now();
  let rows = 0;
  for await (const _ of createReadStream(file).pipe(parse({ columns: true }))) rows += 1;
  if (rows === 0) throw new Error('no rows');
} else {
  const { convertFiles } = await import('../../dist/convert/bulk/convert-files.js');
  const folder = join(import.meta.dirname, '../cases/csv/mappings');
  start = performance.now();
  const { summary } = await convertFiles(
    { mapping: JSON.parse(readFileSync(join(folder, mapping), 'utf8')), inputs: [file], out, to },
    { now: () => performance.now() },
  );
  if (!summary || summary.exams.converted !== summary.exams.read) throw new Error('not all was converted');
}
const seconds = (performance.now() - start) / 1000;
process.stdout.write(JSON.stringify({ seconds, megabytes: process.resourceUsage().maxRSS / 1024 }));
