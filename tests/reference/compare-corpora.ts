import type { Issue } from '../../src/issues/issue.ts';
import * as r4 from '../../src/validate/versions/all-r4.ts';
import * as r4b from '../../src/validate/versions/all-r4b.ts';
import * as r5 from '../../src/validate/versions/all-r5.ts';
import type { Difference } from '../slow/profile-bed/differences.ts';
import { differences } from './all-types/differences.ts';
import { type Corpus, keptCorpusVerdicts, keyOf } from './corpora.ts';
import type { FhirRelease } from './corpus.ts';

const entries = { R4: r4, R4B: r4b, R5: r5 } as const;

export interface CorpusComparison {
  cases: number;
  agreed: number;
  /** Cases of differences that a row of differences.ts judges. */
  readonly judged: Map<Difference, number>;
  /** Differences that no row tells, and cases without a kept verdict. */
  readonly surprises: string[];
}

/** Our verdicts on the cases of a corpus beside the kept ones of HL7's validator. */
export async function compareCorpus(
  corpus: Corpus,
  version: FhirRelease,
): Promise<CorpusComparison> {
  const { validateText } = entries[version];
  const kept = keptCorpusVerdicts(corpus);
  const found: CorpusComparison = { cases: 0, agreed: 0, judged: new Map(), surprises: [] };
  for (const one of await corpus.cases(version)) {
    const theirs = kept.get(keyOf(one));
    found.cases += 1;
    if (theirs === undefined) {
      found.surprises.push(`no kept verdict: ${one.id}`);
      continue;
    }
    const { issues, unchecked } = validateText(one.text);
    const ours = issues.filter(({ severity }) => severity === 'error');
    if (ours.length > 0 === theirs.length > 0) {
      found.agreed += 1;
      continue;
    }
    const row = rowOf(one.id, ours, theirs, unchecked.length > 0);
    const said = ours[0] === undefined ? theirs.join() : nameOf(ours[0]);
    if (row === undefined) found.surprises.push(`${one.id}: ${said}`);
    else found.judged.set(row, (found.judged.get(row) ?? 0) + 1);
  }
  return found;
}

/** One row must tell every error: what is told of one of two is not a judgement of the other. */
function rowOf(
  id: string,
  ours: readonly Issue[],
  theirs: readonly string[],
  open: boolean,
): Difference | undefined {
  const we = ours.length > 0 ? 'refused' : 'accepted';
  const said = we === 'refused' ? ours.map(nameOf) : theirs;
  const fitting = said.map((name) =>
    differences.find(
      (row) =>
        row.we === we &&
        row.says.test(name) &&
        (row.unchecked !== true || open) &&
        (row.cases === undefined || row.cases.test(id)),
    ),
  );
  return fitting.includes(undefined) ? undefined : fitting[0];
}

function nameOf({ code, facts, rule }: Issue): string {
  return `${code} ${code === 'broken-invariant' ? rule : facts.reason}`;
}
