import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' }).split('\n');
const json = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8'));

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: true;
  readonly inBundle?: true;
  readonly dev?: true;
  readonly optional?: true;
  readonly peer?: true;
}

/** Packages of a lock file, without the project itself. */
function locked(path: string): [name: string, Locked][] {
  const packages: Readonly<Record<string, Locked>> = json(path).packages;
  return Object.entries(packages).filter(([name]) => name !== '');
}

const locks = tracked.filter((path) => path.endsWith('package-lock.json'));

/** Licences under which a package may be used to build, test or run; SPDX identifiers. */
const allowed: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
  'MPL-2.0',
  'Python-2.0',
  'WTFPL',
]);

/** Packages whose licence is not of the list, or has no identifier in the lock, with what was read in them. */
const read: Readonly<Record<string, string>> = {
  'node_modules/caniuse-lite':
    'CC-BY-4.0: data of browsers that the mutation tests bring along, and ships in nothing',
  'node_modules/@lhncbc/ucum-lhc': 'a licence of its own, of the U.S. National Library of Medicine',
  'node_modules/fhirpath': 'a licence of its own, of the U.S. National Library of Medicine',
  'node_modules/emitter-component':
    'MIT, from memory: its lock entry names none; comes with an engine that tests ask, and ships in nothing',
  'node_modules/valid-url':
    'MIT, from memory: its lock entry names none; compiles the profiles, and ships in nothing',
  'node_modules/base-64':
    'MIT, as the text in its package says; comes with a renderer that tests fill in, and ships in nothing',
  'node_modules/big-integer': 'Unlicense: comes with a renderer that tests fill in',
  'node_modules/stream-buffers': 'Unlicense: comes with a renderer that tests fill in',
  'node_modules/@fontsource/inter':
    'OFL-1.1: a font of a renderer that tests fill in, left out there',
  'node_modules/@fontsource/material-icons': 'OFL-1.1: as the font above',
  'node_modules/@fontsource/roboto': 'OFL-1.1: as the font above',
};

/** Packages that run a script when they are installed; all work without it. */
const withScript: ReadonlySet<string> = new Set([
  'node_modules/core-js',
  'node_modules/esbuild',
  'node_modules/fhirpath',
  'node_modules/msgpackr-extract',
]);

/** Of a choice, one licence is enough. */
function isAllowed(license: string | undefined): boolean {
  return (license ?? '')
    .replaceAll(/[()]/g, '')
    .split(' OR ')
    .some((one) => allowed.has(one));
}

describe.each(locks)('%s', (path) => {
  const packages = locked(path);

  it('holds packages with an integrity, or inside one that has it', () => {
    const open = packages.filter(([, { integrity, inBundle }]) => !integrity && !inBundle);
    expect(open.map(([name]) => name)).toEqual([]);
  });

  it('holds packages under licences that allow it', () => {
    const others = packages.filter(([name, { license }]) => !isAllowed(license) && !(name in read));
    expect(others.map(([name, { license }]) => `${name} ${license}`)).toEqual([]);
  });

  it('holds no package that must run a script to be installed', () => {
    const scripts = packages.filter(([name, one]) => one.hasInstallScript && !withScript.has(name));
    expect(scripts.map(([name]) => name)).toEqual([]);
  });
});

describe('what users install', () => {
  const run = locked('package-lock.json').filter(
    ([, { dev, optional, peer }]) => !dev && !optional && !peer,
  );

  it('is little, under MIT alone, and runs no script', () => {
    expect(run.length).toBeGreaterThan(0);
    expect(run.length).toBeLessThan(20);
    expect(new Set(run.map(([, { license }]) => license))).toEqual(new Set(['MIT']));
    expect(run.filter(([, { hasInstallScript }]) => hasInstallScript)).toEqual([]);
  });
});

const manifests = tracked.filter((path) => path.endsWith('package.json'));

it.each(manifests)('%s names exact versions', (path) => {
  const { dependencies = {}, devDependencies = {} } = json(path);
  const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
    ([, version]) => !/^(?:\d+\.\d+\.\d+(?:-[\w.]+)?|file:.*)$/.test(String(version)),
  );
  expect(loose).toEqual([]);
});

describe('workflows', () => {
  const workflows = tracked.filter((path) => path.startsWith('.github/workflows/'));

  it.each(workflows)('%s uses no action of others, a fixed image and no right to write', (path) => {
    const text = readFileSync(join(root, path), 'utf8');
    expect(text).not.toMatch(/^\s*-?\s*uses:/m);
    expect(text).toMatch(/container: node:\d+\.\d+\.\d+-\w+/);
    expect(text).toMatch(/permissions:\n {2}contents: read\n/);
  });
});

it('the threat model names tests that are there', () => {
  const text = readFileSync(join(root, '.github/THREAT_MODEL.md'), 'utf8');
  const named = new Set([...text.matchAll(/`(tests\/[\w./-]+)`/g)].map(([, path = '']) => path));
  expect(named.size).toBeGreaterThan(15);
  const missing = [...named].filter(
    (path) => !tracked.some((file) => file === path || file.startsWith(`${path}/`)),
  );
  expect(missing).toEqual([]);
});
