import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const json = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8'));

interface Component {
  readonly group?: string;
  readonly name: string;
  readonly version: string;
  readonly purl: string;
  readonly licenses: readonly { readonly license: { readonly id: string } }[];
}

interface Bill {
  readonly bomFormat: string;
  readonly specVersion: string;
  readonly metadata: { readonly component: Component };
  readonly components: readonly Component[];
}

/** The bill as `npm run sbom` writes it, whole. */
function written(): string {
  execFileSync('npm', ['run', '--silent', 'sbom'], { cwd: root, stdio: 'pipe' });
  return readFileSync(join(root, 'output/sbom.cdx.json'), 'utf8');
}

let text: string;
let bill: Bill;
beforeAll(() => {
  text = written();
  bill = JSON.parse(text);
});

/** @see https://cyclonedx.org/docs/1.6/json/ */
describe('the bill of materials', () => {
  it('is one of CycloneDX, of this package and version', () => {
    const { name, version, license } = json('package.json');
    expect(bill).toMatchObject({ bomFormat: 'CycloneDX', specVersion: '1.6' });
    expect(bill.metadata.component).toMatchObject({
      name,
      version,
      purl: `pkg:npm/${name}@${version}`,
    });
    expect(bill.metadata.component.licenses.map((one) => one.license.id)).toEqual([license]);
  });

  it('names what users install, each with its version and licence, and nothing else', () => {
    const packages: Readonly<Record<string, Readonly<Record<string, unknown>>>> =
      json('package-lock.json').packages;
    const installed = Object.entries(packages)
      .filter(([path, one]) => path !== '' && !one.dev && !one.optional && !one.peer)
      .map(
        ([path, one]) => `${path.replace(/^.*node_modules\//, '')}@${one.version} ${one.license}`,
      );
    const named = bill.components.map(
      ({ group, name, version, licenses }) =>
        `${group === undefined ? '' : `${group}/`}${name}@${version} ${licenses[0]?.license.id}`,
    );
    expect(named.sort()).toEqual(installed.sort());
    expect(named.length).toBeGreaterThan(0);
  });

  it('is the same each time', () => {
    expect(written()).toBe(text);
  });
});
