import { mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import packageJson from '../../package.json' with { type: 'json' };
import { CANONICAL_BASE } from '../terminology/canonical-base.ts';
import { packageFiles } from './fhir-package/package-files.ts';
import { tarball } from './fhir-package/tar.ts';

/**
 * Writes FHIR packages for R4 and R5: the unpacked files and `<name>.tgz` below the target folder.
 * Run: npm run fhir-package -- [--out FOLDER] [--base URL]
 */
const project = fileURLToPath(new URL('../../', import.meta.url));

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      out: { type: 'string', default: join(project, 'output', 'fhir-package') },
      base: { type: 'string', default: CANONICAL_BASE },
    },
  });
  for (const version of ['R4', 'R5'] as const) {
    const order = { version, base: values.base, packageVersion: packageJson.version };
    const files = await packageFiles(order);
    const name = `face-neck-fhir.${version.toLowerCase()}`;
    const folder = join(values.out, name);
    await rm(folder, { recursive: true, force: true });
    for (const [path, text] of files) {
      await mkdir(dirname(join(folder, path)), { recursive: true });
      await writeFile(join(folder, path), text);
    }
    const archive = tarball(files);
    await writeFile(join(values.out, `${name}.tgz`), archive);
    console.info(`${name}: ${files.size} files, ${Math.round(archive.length / 1024)} KB packed`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
