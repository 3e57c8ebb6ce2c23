import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { examplePath, inFolder, run } from '../in-process.ts';

const exam = examplePath('neck-lump');

/** The device of Linux that is always full. */
const noDevice = existsSync('/dev/full') ? undefined : 'this system has no /dev/full';

describe('a device as output', () => {
  it.skipIf(noDevice !== undefined)('that is full is told, and stays a device', async () => {
    const { code, err } = await run(['export', exam, '--out', '/dev/full']);
    expect({ code, err }).toEqual({
      code: 2,
      err: 'face-neck-fhir: cannot write /dev/full: the disk is full\n',
    });
    expect(statSync('/dev/full').isCharacterDevice()).toBe(true);
  });

  it('is written into, and nothing is put in its place', async () => {
    await inFolder(async (folder) => {
      const pipe = join(folder, 'pipe');
      execFileSync('mkfifo', [pipe]);
      const read = import('node:fs/promises').then(({ readFile }) => readFile(pipe, 'utf8'));
      expect((await run(['export', exam, '--out', pipe])).code).toBe(0);
      expect(JSON.parse(await read)).toMatchObject({ resourceType: 'Bundle' });
      expect(statSync(pipe).isFIFO()).toBe(true);
      expect(readdirSync(folder)).toEqual(['pipe']);
    });
  });
});

/** The file system of Linux in which no folder can be made. */
const noProc = existsSync('/proc/self') ? undefined : 'this system has no /proc';

describe('a place for output that cannot be', () => {
  it.skipIf(noProc !== undefined)('is told where a file system takes no folders', async () => {
    const { code, err } = await run(['export', exam, '--out', '/proc/none/at/all.json']);
    expect({ code, err }).toEqual({
      code: 2,
      err: 'face-neck-fhir: cannot write /proc/none/at/all.json: there is no such file or folder\n',
    });
  });

  it('is told where a file stands on the way', async () => {
    await inFolder(async (folder) => {
      writeFileSync(join(folder, 'file'), '');
      const { code, err } = await run(['export', exam, '--out', join(folder, 'file', 'a.json')]);
      expect(code).toBe(2);
      expect(err).toContain(`cannot write ${join(folder, 'file', 'a.json')}: `);
      expect(readFileSync(join(folder, 'file'), 'utf8')).toBe('');
    });
  });
});

/** Only an administrator can mount a disk of a few pages; a container seldom may. */
function mounted(folder: string, options: string): boolean {
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder], { stdio: 'pipe' });
    return true;
  } catch {
    return false;
  }
}

const noMount = (() => {
  if (process.platform !== 'linux') return 'no tmpfs on this system';
  const folder = join(tmpdir(), `face-neck-probe-${process.pid}`);
  mkdirSync(folder, { recursive: true });
  if (!mounted(folder, 'size=64k')) return 'a tmpfs cannot be mounted here';
  execFileSync('umount', [folder]);
  return undefined;
})();

const contents = (folder: string) =>
  Object.fromEntries(
    readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );

describe.skipIf(noMount !== undefined)(`a disk of its own${noMount ? `: ${noMount}` : ''}`, () => {
  let home: string;
  let disk: string;
  beforeAll(async () => {
    home = await mkdtemp(join(tmpdir(), 'face-neck-disk-'));
    disk = join(home, 'disk');
    mkdirSync(disk);
    mounted(disk, 'size=300k');
    const exams = [1, 2, 3, 4, 5, 6].map((seed) => sampleExam(seed, { size: 'small' }));
    writeFileSync(join(home, 'in.csv'), writeExams(exams, 'csv'));
    writeFileSync(join(home, 'map.json'), JSON.stringify(sampleMapping('csv')));
  });
  afterAll(async () => {
    execFileSync('umount', [disk]);
    await rm(home, { recursive: true, force: true });
  });
  const remount = (options: string) =>
    execFileSync('mount', ['-o', `remount,${options}`, disk], { stdio: 'pipe' });
  const convert = (out: string, ...more: string[]) =>
    run(['convert', 'in.csv', '--mapping', 'map.json', '--out', out, ...more], { cwd: home });

  it('that fills up ends a conversion with a line; once there is room it goes on to the same bytes', async () => {
    expect((await convert('plain')).code).toBeLessThan(2);
    remount('size=100k');
    const full = await convert('disk/out');
    expect({ code: full.code, err: full.err }).toEqual({
      code: 2,
      err: 'face-neck-fhir: cannot go on: the disk is full\n',
    });
    remount('size=50m');
    expect((await convert('disk/out', '--resume')).code).toBeLessThan(2);
    expect(contents(join(disk, 'out'))).toEqual(contents(join(home, 'plain')));
  });

  it('that fills up leaves an earlier file as it was', async () => {
    remount('size=50m');
    writeFileSync(join(disk, 'bundle.json'), 'earlier');
    const { size } = statSync(join(home, 'plain', 'bundles.ndjson'));
    writeFileSync(join(disk, 'filler'), Buffer.alloc(Math.max(size, 100_000)));
    remount(`size=${Math.ceil(folderSize(disk) / 4096) * 4096}`);
    const { code, err } = await run(['export', exam, '--out', join(disk, 'bundle.json')]);
    expect({ code, full: err.includes('the disk is full') }).toEqual({ code: 2, full: true });
    expect(readFileSync(join(disk, 'bundle.json'), 'utf8')).toBe('earlier');
    expect(readdirSync(disk).filter((name) => name.endsWith('.part'))).toEqual([]);
    remount('size=50m');
  });

  it('that is read-only is told as that', async () => {
    remount('ro');
    const one = await run(['export', exam, '--out', join(disk, 'a.json')]);
    expect({ code: one.code, told: /: the disk is read-only\n$/.test(one.err) }).toEqual({
      code: 2,
      told: true,
    });
    const folder = await convert('disk/other');
    expect({ code: folder.code, told: /the disk is read-only\n$/.test(folder.err) }).toEqual({
      code: 2,
      told: true,
    });
    remount('rw');
  });
});

/** Bytes of all files below a folder, in whole pages. */
function folderSize(folder: string): number {
  let size = 0;
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const one = statSync(join(folder, name));
    if (one.isFile()) size += Math.ceil(one.size / 4096) * 4096;
  }
  return size;
}
