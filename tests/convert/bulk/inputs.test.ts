import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { findInputs, type Input } from '../../../src/convert/bulk/input/inputs.ts';
import { zipOf } from './archive.ts';
import { temporaryFolder } from './folder.ts';

const fixtures: {
  readonly plain: string;
  readonly zip64: string;
  readonly entries: readonly (readonly [string, string])[];
} = JSON.parse(readFileSync(join(import.meta.dirname, '../../cases/archive/zip.json'), 'utf8'));

async function read(input: Input | undefined): Promise<string> {
  const parts: Buffer[] = [];
  for await (const piece of input?.open(() => {}) ?? []) parts.push(piece);
  return Buffer.concat(parts).toString();
}

function archive(name: string, bytes: Buffer): string {
  const path = join(temporaryFolder(), name);
  writeFileSync(path, bytes);
  return path;
}

describe('folders', () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'b'));
  writeFileSync(join(folder, 'b', 'two.csv'), '2');
  writeFileSync(join(folder, 'a.csv'), '1');
  writeFileSync(join(folder, 'c.csv.gz'), gzipSync('3'));
  writeFileSync(join(folder, '.hidden'), 'x');
  symlinkSync(folder, join(folder, 'circle'));

  it('are searched whole, in order of names, links and hidden files apart', async () => {
    const { inputs, issues } = await findInputs([folder]);
    expect(issues).toEqual([]);
    expect(inputs.map(({ name }) => name)).toEqual(['a.csv', 'two.csv', 'c.csv.gz']);
    expect(await Promise.all(inputs.map(read))).toEqual(['1', '2', '3']);
  });

  it('that are not there are told, and the rest kept', async () => {
    const { inputs, issues } = await findInputs([join(folder, 'no'), join(folder, 'a.csv')]);
    expect(inputs.map(({ name }) => name)).toEqual(['a.csv']);
    expect(issues).toMatchObject([{ code: 'unreadable-input', severity: 'error', path: ['no'] }]);
  });
});

describe('zip', () => {
  it.each(['plain', 'zip64'] as const)('archives of another tool (%s)', async (kind) => {
    const path = archive('other.zip', Buffer.from(fixtures[kind], 'base64'));
    const { inputs, issues } = await findInputs([path]);
    expect(issues).toEqual([]);
    const found = await Promise.all(inputs.map(async (input) => [input.name, await read(input)]));
    expect(found).toEqual(fixtures.entries.map(([name, text]) => [`other.zip!${name}`, text]));
  });

  // Zip slip: a name that leads out of the folder that the archive is unpacked to.
  it.each(['../out.csv', '/etc/out.csv', 'a/../../out.csv', 'C:\\out.csv', '..\\out.csv'])(
    'entries called %s are refused, and the rest read',
    async (name) => {
      const content = Buffer.from('x');
      const path = archive(
        'slip.zip',
        zipOf([
          { name, content },
          { name: 'ok.csv', content },
        ]),
      );
      const { inputs, issues } = await findInputs([path]);
      expect(inputs.map((input) => input.name)).toEqual(['slip.zip!ok.csv']);
      expect(issues).toMatchObject([{ code: 'unreadable-input', path: [`slip.zip!${name}`] }]);
    },
  );

  it('entries that cannot be read are told', async () => {
    const content = Buffer.from('x');
    const path = archive(
      'odd.zip',
      zipOf([
        { name: 'locked.csv', content, encrypted: true },
        { name: 'packed.csv', content, method: 12 },
      ]),
    );
    const { inputs, issues } = await findInputs([path]);
    expect(inputs).toEqual([]);
    expect(issues.map(({ message }) => message)).toEqual([
      'the entry is encrypted',
      'the entry is packed with a method other than store or deflate',
    ]);
  });

  it('entries that are longer, shorter or other than the directory says end with a fault', async () => {
    const content = Buffer.from('some rows\n'.repeat(100));
    for (const claimedSize of [10, 2000]) {
      const path = archive('size.zip', zipOf([{ name: 'a.csv', content, claimedSize }]));
      const { inputs } = await findInputs([path]);
      await expect(read(inputs[0])).rejects.toThrow(/^entry-(?:long|short)$/);
    }
    const bytes = zipOf([{ name: 'a.csv', content, stored: true }]);
    bytes.write('Some', bytes.indexOf('some'));
    const { inputs } = await findInputs([archive('sum.zip', bytes)]);
    await expect(read(inputs[0])).rejects.toThrow('checksum');
  });

  it('a file that is not an archive, and one that is cut off, give an issue', async () => {
    const whole = zipOf([{ name: 'a.csv', content: Buffer.from('x') }]);
    for (const bytes of [
      Buffer.from('no archive'),
      whole.subarray(0, whole.length - 10),
      Buffer.alloc(0),
    ]) {
      const { inputs, issues } = await findInputs([archive('bad.zip', bytes)]);
      expect(inputs).toEqual([]);
      expect(issues).toMatchObject([{ code: 'unreadable-input', severity: 'error' }]);
    }
  });
});

describe('archives that grow beyond any text', () => {
  const zeros = Buffer.alloc(96 * 1024 * 1024);

  it('gzip', async () => {
    const path = archive('bomb.csv.gz', gzipSync(zeros));
    const { inputs } = await findInputs([path]);
    await expect(read(inputs[0])).rejects.toThrow('grows beyond any text');
  });

  it('zip', async () => {
    const path = archive('bomb.zip', zipOf([{ name: 'bomb.csv', content: zeros }]));
    const { inputs } = await findInputs([path]);
    await expect(read(inputs[0])).rejects.toThrow('grows beyond any text');
  });
});
