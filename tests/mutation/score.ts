/** The part of a report of mutation testing that a score needs. @see https://github.com/stryker-mutator/mutation-testing-elements (report schema) */
export interface MutationReport {
  readonly files: {
    readonly [file: string]: {
      readonly mutants: readonly {
        readonly status: string;
        readonly mutatorName: string;
        readonly replacement?: string;
        readonly location: { readonly start: { readonly line: number } };
      }[];
    };
  };
}

export interface FolderScore {
  readonly folder: string;
  readonly killed: number;
  readonly survived: number;
}

const killed = new Set(['Killed', 'Timeout']);
const survived = new Set(['Survived', 'NoCoverage']);

/** The score of each folder below src, and the survivors, one line each. Mutants that do not compile or run count in neither. */
export function mutationScores({ files }: MutationReport): {
  readonly scores: readonly FolderScore[];
  readonly survivors: readonly string[];
} {
  const folders = new Map<string, { killed: number; survived: number }>();
  const survivors: string[] = [];
  for (const [file, { mutants }] of Object.entries(files)) {
    const folder = file.split('/').slice(0, 2).join('/');
    const count = folders.get(folder) ?? { killed: 0, survived: 0 };
    folders.set(folder, count);
    for (const { status, mutatorName, replacement, location } of mutants) {
      if (killed.has(status)) count.killed += 1;
      if (!survived.has(status)) continue;
      count.survived += 1;
      survivors.push(`${file}:${location.start.line} ${mutatorName} -> ${replacement ?? ''}`);
    }
  }
  const scores = [...folders].map(([folder, count]) => ({ folder, ...count }));
  return { scores, survivors };
}

/** Score in per cent by folder and over all, as a table for people. */
export function scoreTable(scores: readonly FolderScore[]): string {
  const total = {
    folder: 'all',
    killed: scores.reduce((sum, row) => sum + row.killed, 0),
    survived: scores.reduce((sum, row) => sum + row.survived, 0),
  };
  return [...scores, total]
    .map(({ folder, killed: found, survived: missed }) => {
      const share = found + missed === 0 ? '-' : ((100 * found) / (found + missed)).toFixed(1);
      return `${folder.padEnd(16)} ${String(found).padStart(6)} of ${String(found + missed).padStart(6)}  ${share.padStart(5)} %`;
    })
    .join('\n');
}
