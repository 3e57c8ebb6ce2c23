/**
 * Cuts exports into records and puts each into the queue, once however often it is run.
 * Run: npx tsx examples/queue/add.ts MAPPING FILE|FOLDER ...
 * Settings by environment: REDIS_HOST, REDIS_PORT.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { cutFiles, parseMappingText } from '../../src/convert/bulk/index.ts';
import { issueText } from '../../src/index.ts';
import { openQueue } from './bull.ts';
import { connection, queueName, type RecordData } from './settings.ts';

const [mapping, ...files] = process.argv.slice(2);
if (mapping === undefined || files.length === 0) {
  throw new TypeError('cannot start: expected a mapping and at least one file');
}

const AT_ONCE = 100;
const queue = openQueue<RecordData>(queueName, connection());
let records: Parameters<typeof queue.addBulk>[0][number][] = [];
let added = 0;
let faults = 0;
const send = async (): Promise<void> => {
  await queue.addBulk(records);
  added += records.length;
  records = [];
};
const { value } = parseMappingText(readFileSync(mapping, 'utf8'));
for await (const found of cutFiles(files, value)) {
  if ('problem' in found) {
    faults += 1;
    console.error(issueText(found.problem));
    continue;
  }
  const { raw, at, header, lines } = found.unit;
  // The same record of the same place is the same job; two alike at two places are two.
  const digest = createHash('sha256')
    .update(JSON.stringify([found.file, at, raw]))
    .digest('hex');
  const data: RecordData = { raw, at, ...(header && { header }), ...(lines && { lines }) };
  records.push({ name: 'record', data, opts: { jobId: `r${digest}`, attempts: 10 } });
  if (records.length >= AT_ONCE) await send();
}
await send();
await queue.close();
console.log(`${added} record(s) in the queue`);
process.exitCode = faults > 0 ? 1 : 0;
