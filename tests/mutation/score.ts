import type { Mutant, Verdict } from './plan.ts';

export interface FolderScore {
  readonly folder: string;
  readonly killed: number;
  readonly survived: number;
  /** Run by the loading of modules alone, or only once in a process: no test could say anything. */
  readonly unasked: number;
}

type Said = ReadonlySet<Verdict['said']>;

function saidOf(verdicts: string): ReadonlyMap<string, Said> {
  const said = new Map<string, Set<Verdict['said']>>();
  for (const line of verdicts.split('\n')) {
    if (line === '') continue;
    const verdict: Verdict = JSON.parse(line);
    said.set(verdict.id, (said.get(verdict.id) ?? new Set()).add(verdict.said));
  }
  return said;
}

/** What a test file makes while it loads is made without mutants, and what it checks of it says nothing. */
function remark(said: Said): string {
  if (said.size === 0) return ' (no test runs it)';
  return said.has('loaded') ? ' (also while files load)' : '';
}

/** The score of each folder below src, and the survivors, one line each, from verdicts line by line. */
export function mutationScores(
  mutants: readonly Mutant[],
  verdicts: string,
): { readonly scores: readonly FolderScore[]; readonly survivors: readonly string[] } {
  const said = saidOf(verdicts);
  const folders = new Map<string, { killed: number; survived: number; unasked: number }>();
  const survivors: string[] = [];
  for (const { id, fileName, mutatorName, replacement, location } of mutants) {
    const folder = fileName.split('/').slice(0, 2).join('/');
    const count = folders.get(folder) ?? { killed: 0, survived: 0, unasked: 0 };
    folders.set(folder, count);
    const of: Said = said.get(id) ?? new Set();
    if (of.has('killed') || of.has('hung')) count.killed += 1;
    else if (!of.has('reached') && of.size > 0) count.unasked += 1;
    else {
      count.survived += 1;
      survivors.push(
        `${fileName}:${location.start.line + 1} ${mutatorName} -> ${replacement}${remark(of)}`,
      );
    }
  }
  return { scores: [...folders].map(([folder, count]) => ({ folder, ...count })), survivors };
}

/** Score in per cent by folder and over all, as a table for people. */
export function scoreTable(scores: readonly FolderScore[]): string {
  const sum = (of: 'killed' | 'survived' | 'unasked'): number =>
    scores.reduce((all, row) => all + row[of], 0);
  const total = {
    folder: 'all',
    killed: sum('killed'),
    survived: sum('survived'),
    unasked: sum('unasked'),
  };
  return [...scores, total]
    .map(({ folder, killed, survived, unasked }) => {
      const asked = killed + survived;
      const share = asked === 0 ? '-' : ((100 * killed) / asked).toFixed(1);
      return `${folder.padEnd(16)} ${String(killed).padStart(6)} of ${String(asked).padStart(6)}  ${share.padStart(5)} %  ${unasked} more not asked`;
    })
    .join('\n');
}
