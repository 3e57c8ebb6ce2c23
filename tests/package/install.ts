import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fresh, root } from './fresh.ts';

/** A folder outside the project's own packages that holds the packed library, and jest's `expect`. */
export default function install(): void {
  rmSync(fresh, { recursive: true, force: true });
  mkdirSync(fresh, { recursive: true });
  const packed = execFileSync('npm', ['pack', '--silent', '--pack-destination', fresh], {
    cwd: root,
    encoding: 'utf8',
  });
  const tarball = `./${packed.trim().split('\n').at(-1)}`;
  writeFileSync(
    join(fresh, 'package.json'),
    JSON.stringify({ name: 'stranger', private: true, type: 'module' }),
  );
  execFileSync('npm', ['install', '--silent', '--no-audit', tarball, 'expect@30.5.2'], {
    cwd: fresh,
  });
}
