import { appendFileSync, mkdirSync, readFileSync, rmdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { convertFiles } from '../../../src/convert/bulk/convert-files.ts';
import type { BulkOptions } from '../../../src/convert/bulk/options.ts';
import { cutBack } from '../../../src/convert/bulk/output/sinks.ts';
import { sampled } from '../../sampled.ts';
import { messyRows } from '../csv/messy-rows.ts';
import { csvMapping } from '../csv/suite.ts';
import { seeded } from '../random.ts';
import { contents, convert, temporaryFolder } from './folder.ts';
import { killedRun, wholeRun } from './killed-run.ts';

const folder = temporaryFolder();
mkdirSync(join(folder, 'in'));
/** Exams in each of two inputs. */
const EXAMS = sampled(30, 600);
writeFileSync(join(folder, 'in', 'a.csv'), messyRows(1, EXAMS).text);
writeFileSync(join(folder, 'in', 'b.csv.gz'), gzipSync(messyRows(2, EXAMS).text));

const options = (out: string): BulkOptions => ({
  mapping: csvMapping,
  inputs: [join(folder, 'in')],
  to: 'resources',
  out: join(folder, out),
  checkpointEvery: EXAMS / 6,
});

describe('a run that is killed', () => {
  // The slow suite does this twenty times.
  it('ends, when resumed, with the bytes of a run that was not', { timeout: 120_000 }, async () => {
    const time = await wholeRun(options('whole'));
    const random = seeded(6);
    for (let round = 0; round < sampled(1, 2); round++) {
      await killedRun(
        options(`killed-${round}`),
        random.below(Math.ceil(time)),
        options('whole').out,
      );
    }
  });

  it('does not go on with other inputs or settings', async () => {
    const out = options('changed').out;
    mkdirSync(out);
    writeFileSync(join(out, 'progress.json'), JSON.stringify({ fingerprint: 'another' }));
    const { summary, issues } = await convert({ ...options('changed'), resume: true });
    expect(summary).toBeUndefined();
    expect(issues).toMatchObject([{ code: 'invalid-value', path: ['out'], severity: 'error' }]);
  });

  it('does not go on in a folder of something else, and leaves its files alone', async () => {
    const out = options('foreign').out;
    mkdirSync(out);
    appendFileSync(join(out, 'letters.ndjson'), 'kept');
    const before = contents(out);
    for (const resume of [true, false]) {
      const { summary, issues } = await convert({ ...options('foreign'), resume });
      expect(summary).toBeUndefined();
      expect(issues).toMatchObject([{ code: 'invalid-value', path: ['out'] }]);
    }
    expect(contents(out)).toEqual(before);
  });

  it('goes on where it was stopped before its first checkpoint', async () => {
    const out = options('early').out;
    mkdirSync(out);
    for (const left of ['exam-ids.bin', 'progress.json.new']) writeFileSync(join(out, left), '');
    const refused = await convert(options('early'));
    expect(refused.issues).toMatchObject([{ code: 'invalid-value', path: ['out'] }]);
    const { summary } = await convert({ ...options('early'), resume: true });
    expect(summary?.exams.read).toBe(2 * EXAMS);
  });

  it('tells once what is to be told at the start', async () => {
    const inputs = [join(folder, 'no archive.zip')];
    writeFileSync(join(folder, 'no archive.zip'), 'none');
    const whole = await convert({ ...options('told'), inputs });
    expect(whole.summary?.issues).toEqual({ 'error unreadable-input no archive.zip': 1 });
    // Stopped when all is done but the summary: a folder of its name stands in the way.
    const stopped = { ...options('told again'), inputs };
    const obstacle = join(stopped.out, 'summary.txt.new');
    const now = (): number => {
      mkdirSync(obstacle, { recursive: true });
      return 0;
    };
    const progress = { isTerminal: false, write: () => {} };
    await expect(convertFiles(stopped, { now, progress })).rejects.toThrow('EISDIR');
    rmdirSync(obstacle);
    await convert({ ...stopped, resume: true });
    expect(contents(stopped.out)).toEqual(contents(options('told').out));
  });

  it('leaves files alone that are not its own', async () => {
    const { out } = options('told again');
    writeFileSync(join(out, 'mended.ndjson'), 'kept');
    await cutBack(out, {});
    expect(readFileSync(join(out, 'mended.ndjson'), 'utf8')).toBe('kept');
    expect(readFileSync(join(out, 'issues.ndjson'), 'utf8')).toBe('');
  });

  it('that had come to its end is left as it is', async () => {
    const first = await convert(options('twice'));
    const before = contents(options('twice').out);
    const second = await convert({ ...options('twice'), resume: true });
    expect(second.summary).toEqual(first.summary);
    expect(contents(options('twice').out)).toEqual(before);
  });
});

describe('a run on several threads', () => {
  it('gives the same bytes as one on this thread', { timeout: 120_000 }, async () => {
    await convert(options('one'));
    await convert({ ...options('several'), jobs: sampled(2, 3) });
    expect(contents(options('several').out)).toEqual(contents(options('one').out));
  });
});
