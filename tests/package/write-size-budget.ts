/**
 * Writes the size budget: a tenth above the sizes of now. Run it only when a growth is wanted,
 * after a build: npx tsx tests/package/write-size-budget.ts
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeEntries, nodeOnly } from './fresh.ts';
import install from './install.ts';
import { bundled, type Size } from './measure.ts';

function withRoom(bytes: number): number {
  return Math.ceil((bytes * 1.1) / 1000) * 1000;
}

async function write(): Promise<void> {
  install();
  const budget: Record<string, Size> = {};
  for (const { name } of codeEntries) {
    const { size } = await bundled(name, nodeOnly.has(name) ? 'node' : 'browser');
    budget[name] = { minified: withRoom(size.minified), gzip: withRoom(size.gzip) };
  }
  const text = `${JSON.stringify(budget, null, 2)}\n`;
  writeFileSync(join(import.meta.dirname, 'size-budget.json'), text);
}

await write();
