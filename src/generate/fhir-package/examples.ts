import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { toBundle } from '../../export/to-bundle.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { orThrow } from '../../issues/issue.ts';
import { parseExam } from '../../model/parse-exam.ts';
import type { PackageOrder } from './head.ts';

const folder = fileURLToPath(new URL('../../../examples/exams/', import.meta.url));

/** Each example exam as a collection and as a document, by the name of its file. */
export async function exampleBundles({
  version,
  base,
}: PackageOrder): Promise<Map<string, string>> {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  const bundles = new Map<string, string>();
  for (const name of names) {
    const value: unknown = JSON.parse(await readFile(join(folder, name), 'utf8'));
    const exam = orThrow(`read ${name}`, parseExam(value));
    for (const bundleType of ['collection', 'document'] as const) {
      const options = {
        fhirVersion: version,
        bundleType,
        canonicalBase: base,
        profiles: true,
      };
      const bundle = orThrow(`export ${name}`, toBundle(exam, options));
      bundles.set(`Bundle-${name.slice(0, -5)}-${bundleType}.json`, toJson(bundle));
    }
  }
  return bundles;
}
