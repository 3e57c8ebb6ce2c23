import { readFileSync } from 'node:fs';
import { type FhirRelease, validateCorpus } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import { publishedCorpus } from './examples.ts';
import { errorNames } from './verdicts.ts';

/**
 * What HL7's validator says of each published example: its names of the errors, none where the
 * example is valid. The packages are held to their digests, so a file name stands for its text.
 */
export type ExampleVerdicts = Readonly<
  Record<FhirRelease, Readonly<Record<string, readonly string[]>>>
>;

export const exampleVerdictsFile: URL = new URL('verdicts/examples.json', import.meta.url);

export function keptExampleVerdicts(): ExampleVerdicts {
  // Written by exampleVerdictsText.
  const kept = JSON.parse(readFileSync(exampleVerdictsFile, 'utf8')) as {
    verdicts: ExampleVerdicts;
  };
  return kept.verdicts;
}

/** Asks HL7's validator about every published example in one process. */
export async function askExamples(): Promise<ExampleVerdicts> {
  const verdicts: Record<FhirRelease, Record<string, string[]>> = { R4: {}, R4B: {}, R5: {} };
  const examples = (await Promise.all(releases.map(publishedCorpus))).flat();
  const asked = examples.map(({ file, version, text }) => ({ id: file, version, text }));
  let at = 0;
  for await (const result of validateCorpus(asked, { load: await extensionsPack() })) {
    const example = examples[at];
    if (example !== undefined) verdicts[example.version][example.file] = errorNames(result);
    at += 1;
  }
  return verdicts;
}

/** JSON with a line for each example. */
export function exampleVerdictsText(verdicts: ExampleVerdicts): string {
  const title = "Errors that HL7's validator (see pom.xml) finds in the published examples";
  const lists = releases.map((version) => {
    const lines = Object.entries(verdicts[version]).map(
      ([file, errors]) => `${JSON.stringify(file)}:${JSON.stringify(errors)}`,
    );
    return `"${version}":{\n${lines.join(',\n')}\n}`;
  });
  return `{"title":${JSON.stringify(title)},\n"verdicts":{\n${lists.join(',\n')}\n}}\n`;
}
