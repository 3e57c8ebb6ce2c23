/**
 * A worker: takes records from the queue, has them converted and puts the answers into a list, one
 * for each record. Start as many as there are cores, on as many machines as there are. A worker that
 * is killed loses nothing: its records are handed out again, and one that was answered already is not
 * answered twice.
 * Run: npx tsx examples/queue/work.ts MAPPING   (after npm run build)
 * Settings by environment: REDIS_HOST, REDIS_PORT, PROGRAM, CONCURRENCY, LOCK_MS, MAX_STALLED.
 */
import { openRedis, openWorker } from './bull.ts';
import { startConverter } from './converter.ts';
import {
  connection,
  doneKey,
  queueName,
  type RecordData,
  repeatsKey,
  resultsKey,
  text,
  whole,
} from './settings.ts';

const [mapping] = process.argv.slice(2);
if (mapping === undefined) throw new TypeError('cannot start: expected a mapping');

/** In one step: either the record is done and its answer in the list, or neither. */
const answerOnce = `
  if redis.call('SADD', KEYS[1], ARGV[1]) == 1 then
    return redis.call('RPUSH', KEYS[2], ARGV[2])
  end
  return redis.call('INCR', KEYS[3])`;

const redis = openRedis(connection());
const converter = startConverter(text('PROGRAM', 'dist/cli/bin.js'), mapping);
const lockDuration = whole('LOCK_MS', 30_000);
const worker = openWorker<RecordData>(
  queueName,
  connection(),
  {
    concurrency: whole('CONCURRENCY', 4),
    lockDuration,
    stalledInterval: Math.ceil(lockDuration / 2),
    maxStalledCount: whole('MAX_STALLED', 10),
  },
  async ({ id, data }) => {
    const line = await converter.convert(id, data);
    await redis.eval(answerOnce, 3, doneKey, resultsKey, repeatsKey, id, line);
  },
);
// Such as a lock that was lost on a busy machine: the record is handed out again.
worker.on('error', ({ message }) => console.error(message));
console.log('Working');

async function end(): Promise<void> {
  await worker.close();
  await converter.end();
  await redis.quit();
}
process.once('SIGTERM', end);
process.once('SIGINT', end);
// Without its program the worker could only fail one record after the other.
void converter.ended.then(() => process.exit());
