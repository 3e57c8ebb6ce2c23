import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { type CutUnit, cutFiles } from '../../../src/convert/bulk/input/cut-files.ts';
import { messyRows } from '../csv/messy-rows.ts';
import { csvMapping } from '../csv/suite.ts';
import { temporaryFolder } from './folder.ts';

async function cut(paths: readonly string[], mapping: unknown): Promise<CutUnit[]> {
  const found: CutUnit[] = [];
  for await (const one of cutFiles(paths, mapping)) found.push(one);
  return found;
}

it('cuts files into the texts of single exams, and tells what cannot be read', async () => {
  const folder = temporaryFolder();
  const { text, units } = messyRows(1, 200);
  writeFileSync(join(folder, 'a.csv'), text);
  writeFileSync(join(folder, 'b.csv.gz'), gzipSync(text));
  writeFileSync(join(folder, 'c.zip'), 'no archive');
  const found = await cut([folder], csvMapping);
  expect(found.filter((one) => 'problem' in one)).toMatchObject([
    { file: 'c.zip', problem: { code: 'unreadable-input' } },
  ]);
  for (const file of ['a.csv', 'b.csv.gz']) {
    const own = found.filter((one) => one.file === file);
    expect(own.length).toBe(units);
    expect(own[0]).toMatchObject({ unit: { at: { line: 2 }, header: expect.any(Array) } });
  }
});

it('reads nothing where the mapping is wrong', async () => {
  const found = await cut(['/nowhere'], { format: 'face-neck-mapping/1' });
  expect(found.length).toBeGreaterThan(0);
  for (const one of found) expect(one).toMatchObject({ file: 'mapping', problem: {} });
});
