import { mkdirSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { JsonObject } from '../../../src/validate/walk/json.ts';
import { type ReferenceResult, startValidator } from '../../reference/corpus.ts';
import { extensionsPack } from '../../reference/definitions.ts';
import { type Guide, guides, readGuide } from './guides.ts';
import { digestOf, mutantsOf } from './mutations.ts';
import { keptVerdicts, verdictsFile } from './verdicts.ts';

/*
 * Asks HL7's validator about every mutant that has no kept verdict:
 * tsx tests/slow/profile-bed/record.ts [GUIDE...]
 * Its chain: the definitions of FHIR R4, of the extensions pack and of the guide alone, without a
 * terminology server; a display that differs is an error; one coding of the value set is enough.
 */

const names = process.argv.slice(2);
for (const guide of guides) {
  if (names.length === 0 || names.includes(guide.name)) await record(guide);
}

async function record(guide: Guide): Promise<void> {
  const files = await readGuide(guide);
  const kept = new Map(keptVerdicts(guide));
  const open = mutantsOf(files).filter(({ digest }) => !kept.has(digest));
  const bases = new Map(files.examples.map(({ file, resource }) => [file, resource]));
  const pack = (await extensionsPack()).filter(({ version }) => version === 'R4');
  const validator = await startValidator({
    load: [...pack, { version: 'R4', folder: files.folder }],
    anyCoding: true,
  });
  const ask = async (id: string, resource: JsonObject): Promise<string[]> =>
    errorsOf(await validator.validate({ id, version: 'R4', resource }));
  const sound = new Map<string, Set<string>>();
  for (const file of new Set(open.map((each) => each.file))) {
    const resource = bases.get(file);
    if (resource === undefined) continue;
    const errors = await ask(file, resource);
    sound.set(file, new Set(errors));
    kept.set(digestOf(resource), { digest: digestOf(resource), errors });
  }
  let done = 0;
  for (const { file, resource, digest } of open) {
    const before = sound.get(file) ?? new Set();
    const errors = (await ask(digest, resource)).filter((error) => !before.has(error));
    kept.set(digest, { digest, errors });
    done += 1;
    if (done % 200 === 0) console.info(`${guide.name}: ${done} of ${open.length}`);
  }
  await validator.stop();
  const lines = [...kept.values()].map(({ digest, errors }) => JSON.stringify([digest, errors]));
  mkdirSync(new URL('.', verdictsFile(guide)), { recursive: true });
  writeFileSync(verdictsFile(guide), gzipSync(`${lines.sort().join('\n')}\n`, { level: 9 }));
  console.info(`${guide.name}: ${open.length} asked, ${kept.size} kept`);
}

/** Name and place of each error; a text without what it quotes where it has no name. */
function errorsOf({ issues }: ReferenceResult): string[] {
  const errors = issues.filter(({ severity }) => severity === 'error' || severity === 'fatal');
  return [
    ...new Set(
      errors.map(({ messageId, message, location }) => {
        const name = messageId === '' ? message.slice(0, 120) : messageId;
        return `${name} @ ${location.replace(/\/\*.*?\*\//g, '')}`;
      }),
    ),
  ];
}
