import { writeFileSync } from 'node:fs';
import {
  type CorpusCase,
  corpora,
  corpusVerdictsText,
  keptCorpusVerdicts,
  keyOf,
  verdictsFile,
} from './corpora.ts';
import { validateCorpus } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import { errorNames } from './verdicts.ts';

/*
 * Asks HL7's validator about every case of the corpora of all types that has no kept verdict:
 * tsx tests/reference/record-corpora.ts [NAME...]
 * Its chain: FHIR's own definitions and the extensions pack, without a terminology server; a display
 * that differs is an error; one coding of a value set is enough.
 */
const names = process.argv.slice(2);
for (const corpus of corpora) {
  if (names.length > 0 && !names.includes(corpus.name)) continue;
  const { format, impliedProfiles } = corpus;
  const before = keptCorpusVerdicts(corpus);
  const found = new Map<string, readonly string[]>();
  const open: CorpusCase[] = [];
  for (const version of releases) {
    for (const one of await corpus.cases(version)) {
      const known = before.get(keyOf(one));
      if (known === undefined) open.push(one);
      else found.set(keyOf(one), known);
    }
  }
  const inputs = open.map(({ id, version, text }) => ({ id, version, text, format }));
  const options = { load: await extensionsPack(), anyCoding: true, impliedProfiles };
  let at = 0;
  for await (const result of validateCorpus(inputs, options)) {
    const one = open[at];
    if (one !== undefined) found.set(keyOf(one), errorNames(result));
    at += 1;
    if (at % 200 === 0) console.info(`${corpus.name}: ${at} of ${open.length}`);
  }
  writeFileSync(verdictsFile(corpus), corpusVerdictsText(found));
  console.info(`${corpus.name}: ${open.length} asked, ${found.size} kept`);
}
