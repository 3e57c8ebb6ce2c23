import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { root } from './fresh.ts';

/** SHA-512 of the package as it would be published. */
function packed(): string {
  const folder = mkdtempSync(join(tmpdir(), 'packed-'));
  try {
    const name = execFileSync('npm', ['pack', '--silent', '--pack-destination', folder], {
      cwd: root,
      encoding: 'utf8',
    });
    const file = join(folder, name.trim().split('\n').at(-1) ?? '');
    return createHash('sha512').update(readFileSync(file)).digest('hex');
  } finally {
    rmSync(folder, { recursive: true });
  }
}

it('the same commit gives the same package, byte for byte', () => {
  expect(packed()).toBe(packed());
});
