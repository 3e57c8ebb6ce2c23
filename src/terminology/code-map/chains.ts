import { type Issue, issue } from '../../issues/issue.ts';
import type { Relation } from '../types.ts';
import type { SoundEntry } from './check-entry.ts';
import { type AdopterCoding, pathOf } from './entry.ts';

/** Entries by their source. */
export type Links = ReadonlyMap<string, readonly SoundEntry[]>;

/** Where an entry leads: `system|code`. None for a removal. */
export function targetOf({ entry }: SoundEntry): string | undefined {
  return entry.target === undefined ? undefined : `${entry.system}|${entry.target}`;
}

/**
 * Codings that a source leads to, directly and over codes of other systems, nearest first. Going on
 * weakens the relation: what is wider than something wider is wider, and so on; a narrower or related
 * step leaves no more than `relatedto`. Ends with one coding more than `most`.
 */
export function reachable(source: string, links: Links, most: number): AdopterCoding[] {
  const found = new Map<string, AdopterCoding>();
  const open = (links.get(source) ?? []).map((step) => ({ step, relation: step.relation }));
  for (let at = 0; at < open.length && found.size <= most; at++) {
    const next = open[at];
    const target = next === undefined ? undefined : targetOf(next.step);
    if (next === undefined || target === undefined || found.has(target)) continue;
    found.set(target, codingOf(next.step, next.relation));
    for (const step of links.get(target) ?? []) {
      open.push({ step, relation: composed(next.relation, step.relation) });
    }
  }
  return [...found.values()];
}

function composed(first: Relation, second: Relation): Relation {
  if (first === 'equivalent') return second;
  if (second === 'equivalent' || first === second) return first;
  return 'relatedto';
}

function codingOf({ entry }: SoundEntry, relation: Relation): AdopterCoding {
  const { system, version, target = '', display, unit } = entry;
  return {
    system,
    ...(version !== undefined && { version }),
    code: target,
    ...(display !== undefined && { display }),
    relation,
    ...(unit !== undefined && { unit }),
  };
}

/** An issue at each entry that closes a circle. */
export function circleIssues(links: Links): Issue[] {
  const issues: Issue[] = [];
  const state = new Map<string, 'open' | 'done'>();
  for (const start of links.keys()) {
    if (state.has(start)) continue;
    const way: { readonly node: string; at: number }[] = [{ node: start, at: 0 }];
    state.set(start, 'open');
    for (let here = way.at(-1); here !== undefined; here = way.at(-1)) {
      const step = links.get(here.node)?.[here.at];
      here.at += 1;
      if (step === undefined) {
        state.set(here.node, 'done');
        way.pop();
        continue;
      }
      const target = targetOf(step);
      if (target === undefined) continue;
      if (state.get(target) === 'open') issues.push(circleIssue(step));
      else if (!state.has(target)) {
        state.set(target, 'open');
        way.push({ node: target, at: 0 });
      }
    }
  }
  return issues;
}

function circleIssue({ entry }: SoundEntry): Issue {
  return issue(
    'ambiguous-mapping',
    pathOf(entry, 'target'),
    { reason: 'circle' },
    {
      source: entry.position,
    },
  );
}
