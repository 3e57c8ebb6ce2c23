import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
  const packages = [tarball, 'expect@30.5.2', ...peers()];
  execFileSync('npm', ['install', '--silent', '--no-audit', ...packages], { cwd: fresh });
}

/** What single entries need beside the library, in the versions that it is tested with. */
function peers(): string[] {
  const { peerDependencies, devDependencies } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  );
  return Object.keys(peerDependencies).map((name) => `${name}@${devDependencies[name]}`);
}
