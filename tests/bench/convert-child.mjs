// One measurement in a process of its own, so that its peak memory is its own.
import { createReadStream } from 'node:fs';
import { join } from 'node:path';

const [, , what, file, out, mapping, to] = process.argv;
// Processor time of all threads, so that what else the machine does leaves it as it is.
let start = process.cpuUsage();

if (what === 'parse') {
  const { parse } = await import('csv-parse');
  start = process.cpuUsage();
  let rows = 0;
  for await (const _ of createReadStream(file).pipe(parse({ columns: true }))) rows += 1;
  if (rows === 0) throw new Error('no rows');
} else {
  // The command line, which is what people run; it exits with 0 only if all was converted.
  const { cli } = await import('../../dist/cli/cli.js');
  const { nodeIo } = await import('../../dist/cli/node-io.js');
  const folder = join(import.meta.dirname, '../cases/csv/mappings');
  const io = { ...nodeIo(), out: async () => {} };
  start = process.cpuUsage();
  const argv = ['convert', file, '--mapping', join(folder, mapping), '--out', out, '--to', to];
  if ((await cli(argv, io)) !== 0) throw new Error('not all was converted');
}
const { user, system } = process.cpuUsage(start);
const seconds = (user + system) / 1e6;
process.stdout.write(JSON.stringify({ seconds, megabytes: process.resourceUsage().maxRSS / 1024 }));
