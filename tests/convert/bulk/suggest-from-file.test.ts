import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { suggestFromFile } from '../../../src/convert/bulk/scan/suggest-from-file.ts';
import { messyRows } from '../csv/messy-rows.ts';
import { temporaryFolder } from './folder.ts';

it('looks at the beginning of a file, packed or not, in its own character set', async () => {
  const folder = temporaryFolder();
  const latin = Buffer.from('exam_no;größe;MRD1_R\nX1;klein;4\n', 'latin1');
  writeFileSync(join(folder, 'a.csv'), latin);
  writeFileSync(join(folder, 'b.csv.gz'), gzipSync(messyRows(1, 60_000).text));

  const small = await suggestFromFile(join(folder, 'a.csv'));
  expect(small.mapping['source']).toEqual({ syntax: 'csv', delimiter: ';' });
  expect(small.issues.map(({ path }) => path[0])).toContain('größe');
  const large = await suggestFromFile(join(folder, 'b.csv.gz'));
  expect(large.mapping['fields']).toMatchObject({ MRD1_R: { kind: 'measurement' } });
});

it('tells a file that is not there', async () => {
  const { issues } = await suggestFromFile(join(temporaryFolder(), 'none.csv'));
  expect(issues[0]).toMatchObject({ code: 'unreadable-input' });
});
