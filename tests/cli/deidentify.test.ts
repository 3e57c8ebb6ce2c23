import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { deidentifiedLabels, deidentify } from '../../src/deidentify/index.ts';
import { toFlat } from '../../src/flat/index.ts';
import { toBundle, toJson } from '../../src/index.ts';
import { examplePath, inFolder, run } from './in-process.ts';

const secret = '8b1a9953c4611296a827abf8c47804d7';
const lump = examples.get('neck-lump');
if (lump === undefined) throw new Error('no example');

describe('--deidentify', () => {
  it('writes what the library gives, and tells of small cells', async () => {
    await inFolder(async (folder) => {
      const file = join(folder, 'secret.txt');
      writeFileSync(file, `${secret}\n`);
      const { code, out, err } = await run([
        'export',
        examplePath('neck-lump'),
        '--deidentify',
        file,
      ]);
      expect(code).toBe(0);
      const made = deidentify(lump, { secret }).value ?? lump;
      const filing = { security: deidentifiedLabels };
      expect(out).toBe(`${toJson(toBundle(made, { filing }).value, { pretty: true })}\n`);
      expect(out).not.toContain(lump.id);
      expect(err).toMatch(/^\d+ cells of a sign or complaint, gender and year have fewer than 5/);
      const flat = ['flat', examplePath('neck-lump'), '--to', 'ndjson', '--dates', 'year'];
      const rows = await run([...flat, '--deidentify', file]);
      const cut = deidentify(lump, { secret, dates: 'year' }).value ?? lump;
      const lines = (toFlat(cut).value ?? []).map((row) => `${JSON.stringify(row)}\n`);
      expect(rows.out).toBe(lines.join(''));
      expect(rows.out).not.toContain(lump.id);
    });
  });

  it('refuses a short secret, which it does not repeat', async () => {
    await inFolder(async (folder) => {
      const file = join(folder, 'secret.txt');
      writeFileSync(file, 'kelp');
      const { code, out, err } = await run([
        'export',
        examplePath('neck-lump'),
        '--deidentify',
        file,
      ]);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).not.toContain('kelp');
    });
  });
});
