import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { toBundleOrThrow } from '../export/to-bundle.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { parseExamOrThrow } from '../model/parse-exam.ts';

/**
 * Writes profiles/examples: for each profile one resource of the example exams. Documents, which are
 * large, are examples of the FHIR package.
 * Run: npm run profiles
 */
const project = fileURLToPath(new URL('../../', import.meta.url));
const target = join(project, 'profiles', 'examples');

/** The short exam first; the other one has what it lacks. */
const exams = ['broken-off', 'yearly-check'];

/** Texts of the examples by file name. */
export async function profileExamples(): Promise<Map<string, string>> {
  const files = new Map<string, string>();
  for (const name of exams) {
    const path = join(project, 'examples', 'exams', `${name}.json`);
    const exam = parseExamOrThrow(JSON.parse(await readFile(path, 'utf8')));
    const entries = toBundleOrThrow(exam, { bundleType: 'document', profiles: true }).entry ?? [];
    const places = new Map(
      entries.map(({ fullUrl, resource }) => [
        fullUrl,
        `${resource?.resourceType}/${resource?.id}`,
      ]),
    );
    for (const { resource } of entries) {
      const [profile] = resource?.meta?.profile ?? [];
      const file = `${profile?.slice(profile.lastIndexOf('/') + 1)}.json`;
      if (profile === undefined || files.has(file)) continue;
      // Outside its bundle a resource is referred to by type and id.
      const text = toJson(resource, { pretty: true });
      files.set(
        file,
        `${text.replace(/urn:uuid:[0-9a-f-]{36}/g, (url) => places.get(url) ?? url)}\n`,
      );
    }
  }
  return files;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const files = await profileExamples();
  await rm(target, { recursive: true, force: true });
  await mkdir(target, { recursive: true });
  for (const [name, text] of files) await writeFile(join(target, name), text);
  console.info(`${files.size} examples in profiles/examples`);
}
