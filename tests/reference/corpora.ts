import { existsSync, readFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import { anyResources, furtherExamples, moreBroken, oddlyValued } from './all-types/resources.ts';
import { vitalSignCases } from './all-types/vital-signs.ts';
import { wholeCases } from './all-types/whole-cases.ts';
import { xmlCases } from './all-types/xml.ts';
import type { FhirRelease } from './corpus.ts';

/** A text to validate; the same on every machine. */
export interface CorpusCase {
  readonly id: string;
  readonly version: FhirRelease;
  readonly text: string;
  /** The first eight digits of the SHA-256 of the text. */
  readonly digest: string;
}

export interface Corpus {
  readonly name: string;
  readonly format: 'json' | 'xml';
  /** Whether HL7's validator was told to apply profiles by code, as its command line does. */
  readonly impliedProfiles: boolean;
  readonly cases: (version: FhirRelease) => Promise<readonly CorpusCase[]>;
}

/** Resources of every type, beside the verdicts of HL7's validator. */
export const corpora: readonly Corpus[] = [
  { name: 'examples', format: 'json', impliedProfiles: false, cases: anyResources },
  { name: 'further-examples', format: 'json', impliedProfiles: false, cases: furtherExamples },
  { name: 'more-faults', format: 'json', impliedProfiles: false, cases: moreBroken },
  { name: 'odd-values', format: 'json', impliedProfiles: false, cases: oddlyValued },
  {
    name: 'wholes',
    format: 'json',
    impliedProfiles: false,
    cases: (version) => Promise.resolve(wholeCases(version)),
  },
  { name: 'xml', format: 'xml', impliedProfiles: false, cases: xmlCases },
  {
    name: 'vital-signs',
    format: 'json',
    impliedProfiles: true,
    cases: (version) => Promise.resolve(vitalSignCases(version)),
  },
];

/** HL7's names of the errors by digest; none where it accepts the text. */
export type CorpusVerdicts = ReadonlyMap<string, readonly string[]>;

export function verdictsFile({ name }: Corpus): URL {
  return new URL(`verdicts/all-types-${name}.ndjson.gz`, import.meta.url);
}

/** Kept verdicts by version and digest. */
export function keptCorpusVerdicts(corpus: Corpus): CorpusVerdicts {
  const file = verdictsFile(corpus);
  if (!existsSync(file)) return new Map();
  const lines = gunzipSync(readFileSync(file)).toString('utf8').trim().split('\n');
  // Written by corpusVerdictsText.
  return new Map(lines.map((line) => JSON.parse(line) as [string, string[]]));
}

export function keyOf({ version, digest }: CorpusCase): string {
  return `${version} ${digest}`;
}

export function corpusVerdictsText(verdicts: CorpusVerdicts): Buffer {
  const lines = [...verdicts].map((row) => JSON.stringify(row)).sort();
  return gzipSync(`${lines.join('\n')}\n`, { level: 9 });
}
