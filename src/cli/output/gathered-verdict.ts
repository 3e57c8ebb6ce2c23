import { bounds } from '../../issues/budget.ts';
import type { Issue, Severity } from '../../issues/issue.ts';
import { restIssue } from '../../issues/issue-list.ts';
import type { EntryValidation } from '../../validate/text/validate-entries.ts';
import type { Conformance } from '../../validate/validate-bundle.ts';
import type { Unchecked } from '../../validate/walk/scope.ts';

/** The verdict on a file that was looked at entry by entry, of a size that its length does not change. */
export interface GatheredVerdict {
  readonly conformance: Conformance;
  /** The worst of them, as many as of a document that is held. */
  readonly issues: readonly Issue[];
  /** Of all that was found. */
  readonly counts: Readonly<Record<Severity, number>>;
  /** Each rule where it was first passed over. */
  readonly unchecked: readonly Unchecked[];
}

const severities: readonly Severity[] = ['error', 'warning', 'information'];

export async function gathered(
  entries: AsyncIterable<EntryValidation>,
  most: number = bounds().issues,
): Promise<GatheredVerdict> {
  const found = new GatheredIssues(most);
  const unchecked = new Map<string, Unchecked>();
  let conformance: Conformance = 'conforms';
  for await (const { issues, unchecked: open, whole } of entries) {
    for (const each of issues) found.add(each);
    for (const one of open) {
      if (unchecked.size < most && !unchecked.has(one.rule)) unchecked.set(one.rule, one);
    }
    conformance = whole ?? conformance;
  }
  const { counts } = found;
  return { conformance, issues: found.kept(), counts, unchecked: [...unchecked.values()] };
}

class GatheredIssues {
  readonly counts: Record<Severity, number> = { error: 0, warning: 0, information: 0 };
  readonly #most: number;
  readonly #lists: Record<Severity, [place: number, found: Issue][]> = {
    error: [],
    warning: [],
    information: [],
  };
  #place = 0;

  constructor(most: number) {
    this.#most = most;
  }

  add(found: Issue): void {
    const { severity, code, facts } = found;
    // An entry that has more than a document may tell says how many more.
    const rest = code === 'issues-cut' && 'count' in facts ? Number(facts.count) : undefined;
    this.counts[severity] += rest ?? 1;
    const list = this.#lists[severity];
    if (rest === undefined && list.length < this.#most) list.push([this.#place++, found]);
  }

  /** The worst, in their order, and how many more there are. */
  kept(): readonly Issue[] {
    const kept = severities
      .flatMap((severity) => this.#lists[severity])
      .slice(0, this.#most)
      .sort(([one], [other]) => one - other)
      .map(([, found]) => found);
    const left = new Map(Object.entries(this.counts));
    for (const { severity } of kept) left.set(severity, (left.get(severity) ?? 0) - 1);
    const count = [...left.values()].reduce((sum, each) => sum + each, 0);
    if (count === 0) return kept;
    return [
      ...kept,
      restIssue(
        count,
        severities.find((severity) => left.get(severity) !== 0),
      ),
    ];
  }
}
