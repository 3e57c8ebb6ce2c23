import { readFileSync } from 'node:fs';
import type { FhirRelease, ReferenceIssue, ReferenceResult } from './corpus.ts';
import { releases } from './definitions.ts';
import type { MutantCase } from './mutants.ts';

/** What HL7's validator said of one mutant. */
export interface Verdict {
  readonly base: string;
  readonly seed: number;
  readonly digest: string;
  readonly valid: boolean;
  /** Its names of the errors, or their texts where it has no name for them. */
  readonly errors: readonly string[];
}

/** Verdicts on the mutants of each fault. */
export type Verdicts = Readonly<Record<FhirRelease, ReadonlyMap<string, readonly Verdict[]>>>;

/** As kept: base, seed, digest, 1 for valid, places of the errors in the list of messages. */
type Row = [base: string, seed: number, digest: string, valid: 0 | 1, errors: number[]];

interface Kept {
  readonly title: string;
  readonly messages: readonly string[];
  readonly verdicts: Readonly<Record<FhirRelease, Readonly<Record<string, readonly Row[]>>>>;
}

export const verdictsFile: URL = new URL('verdicts/verdicts.json', import.meta.url);

export function keptVerdicts(): Verdicts {
  const kept = JSON.parse(readFileSync(verdictsFile, 'utf8')) as Kept; // written by verdictsText
  const read = (version: FhirRelease): ReadonlyMap<string, readonly Verdict[]> =>
    new Map(
      Object.entries(kept.verdicts[version]).map(([fault, rows]) => [
        fault,
        rows.map(([base, seed, digest, valid, errors]) => ({
          base,
          seed,
          digest,
          valid: valid === 1,
          errors: errors.map((at) => kept.messages[at] ?? ''),
        })),
      ]),
    );
  return { R4: read('R4'), R4B: read('R4B'), R5: read('R5') };
}

/** The verdict on a mutant, without what it says of other places than the fault. */
export function verdictOn(mutant: MutantCase, result: ReferenceResult): Verdict {
  const { base, seed, digest } = mutant;
  return { base, seed, digest, valid: result.valid, errors: errorNames(result) };
}

/** The validator's names of the errors it finds, each once, or their texts where it has no name. */
export function errorNames({ issues }: ReferenceResult): string[] {
  return [...new Set(issues.filter(isError).map(nameOf))].sort();
}

/** JSON with one line for each fault and version, so that a change of one is a change of one line. */
export function verdictsText(verdicts: Verdicts): string {
  const all = releases.flatMap((version) => [...verdicts[version].values()].flat());
  const messages = [...new Set(all.flatMap(({ errors }) => errors))].sort();
  const place = new Map(messages.map((message, at) => [message, at]));
  const lines = (version: FhirRelease): string =>
    [...verdicts[version]]
      .map(([fault, list]) => {
        const rows = list.map(({ base, seed, digest, valid, errors }) => [
          base,
          seed,
          digest,
          valid ? 1 : 0,
          errors.map((error) => place.get(error)),
        ]);
        return `${JSON.stringify(fault)}:${JSON.stringify(rows)}`;
      })
      .join(',\n');
  const title = "Verdicts of HL7's validator (see pom.xml) on each mutant of the bases";
  return `{"title":${JSON.stringify(title)},\n"messages":[\n${messages
    .map((message) => JSON.stringify(message))
    .join(',\n')}\n],\n"verdicts":{\n${releases
    .map((version) => `"${version}":{\n${lines(version)}\n}`)
    .join(',\n')}\n}}\n`;
}

function isError({ severity }: ReferenceIssue): boolean {
  return severity === 'error' || severity === 'fatal';
}

/** The last part of the name of an invariant; a text without what it quotes. */
function nameOf({ messageId, message }: ReferenceIssue): string {
  if (messageId !== '') return messageId.replace(/^http.*#/, '');
  return message.replace(/(['"`]).*?\1/g, '...').slice(0, 100);
}
