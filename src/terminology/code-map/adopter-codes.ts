import { append } from '../../data/append.ts';
import { type BudgetOption, within } from '../../issues/budget.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issue,
  type Outcome,
  success,
} from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import { CANONICAL_BASE } from '../canonical-base.ts';
import { builtInCatalogue, type Catalogue } from '../catalogue.ts';
import { circleIssues, type Links, reachable, targetOf } from './chains.ts';
import { entryChecker, type SoundEntry } from './check-entry.ts';
import { type AdopterCodes, type AdopterEntry, type CodeMapEntry, pathOf } from './entry.ts';

export interface CodeMapOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** Base of our code systems, as in the export. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /** What the call may take; default `budgets.codeMap`. */
  readonly budget?: BudgetOption;
}

/** Entries of one map; a map of every code that we have holds some 2,000. */
const MOST_ENTRIES = 100_000;

/** Codings of all rows together: a chain over other systems counts for each row that leads into it. */
const MOST_CODINGS = 500_000;

/** A line of a code map as it stands in a file of settings, whose place follows from its number. */
export type CodeMapRow = Omit<CodeMapEntry, 'path' | 'paths' | 'position'>;

/** Checks the lines of a code map that stand as `codeMap` in a file of settings, where there is one. */
export function codesOfRows(
  rows: readonly CodeMapRow[] | undefined,
  catalogue: Catalogue,
  canonicalBase: string | undefined,
): Outcome<AdopterCodes | undefined> {
  if (rows === undefined) return success(undefined);
  const entries = rows.map((row, at) => ({ ...row, path: ['codeMap', at] }));
  return adopterCodes(entries, {
    catalogue,
    ...(canonicalBase !== undefined && { canonicalBase }),
  });
}

/**
 * Checks a code map of your own, to be given to `toBundle` as `codes`.
 *
 * @param entries The lines of the map; see {@link CodeMapEntry}.
 * @param options The catalogue whose rows are mapped, and the base of our code systems.
 * @returns The map. It fails for an unknown table or row, a target that cannot be a code of its
 *   system or is one of ours, a unit that UCUM does not know or that does not fit the measure, a
 *   line that stands twice, and a circle. Warnings: a line to which no row leads, two codes of one
 *   system that both claim to be equivalent, a display that is the name of another code.
 * @example
 * const line = { source: 'findings', code: 'naevus', system: 'https://harbour.example/codes' };
 * const codes = adopterCodes([{ ...line, target: 'M7', relation: 'equivalent', path: [0] }]);
 */
export function adopterCodes(
  entries: readonly CodeMapEntry[],
  options: CodeMapOptions = {},
): Outcome<AdopterCodes> {
  return within(
    'codeMap',
    options.budget,
    () => {
      const { value, issues } = checkedMap(entries, options);
      const listed = cutIssues(issues);
      return value === undefined ? failure(listed) : success(value, listed);
    },
    (why) => failure([endedIssue(why)]),
  );
}

function checkedMap(
  entries: readonly CodeMapEntry[],
  { catalogue = builtInCatalogue, canonicalBase: base = CANONICAL_BASE }: CodeMapOptions,
): Outcome<AdopterCodes> {
  if (entries.length > MOST_ENTRIES) {
    const details = {};
    return failure([issue('too-large', [], { reason: 'lines', maximum: MOST_ENTRIES }, details)]);
  }
  const check = entryChecker({ catalogue, base });
  const checked = entries.map(check);
  const sound = checked.flatMap((one) => one.sound ?? []);
  const links = linksOf(sound);
  const issues = [
    ...checked.flatMap((one) => one.issues),
    ...repeatIssues(sound),
    ...circleIssues(links),
  ];
  if (hasErrors(issues)) return failure(issues);
  const entriesOf = ownEntries(sound, links);
  if (entriesOf === undefined) {
    return failure([issue('too-large', [], { reason: 'lines', maximum: MOST_CODINGS })]);
  }
  append(issues, unreachedIssues(sound, entriesOf));
  append(issues, rivalIssues(sound));
  return success({ entries: entriesOf }, issues);
}

/** By source of ours; undefined where chains over other systems lead to more codings than are kept. */
function ownEntries(
  sound: readonly SoundEntry[],
  links: Links,
): Map<string, AdopterEntry> | undefined {
  const entriesOf = new Map<string, AdopterEntry>();
  let left = MOST_CODINGS;
  for (const { own, source } of sound) {
    if (!own || entriesOf.has(source)) continue;
    const direct = links.get(source) ?? [];
    const codings = reachable(source, links, left);
    left -= codings.length;
    if (left < 0) return undefined;
    const replaces = direct.filter(({ replace }) => replace).map(({ entry }) => entry.system);
    entriesOf.set(source, { replaces: new Set(replaces), codings });
  }
  return entriesOf;
}

function linksOf(sound: readonly SoundEntry[]): Links {
  const links = new Map<string, SoundEntry[]>();
  for (const one of sound) {
    const list = links.get(one.source);
    if (list === undefined) links.set(one.source, [one]);
    else list.push(one);
  }
  return links;
}

function repeatIssues(sound: readonly SoundEntry[]): Issue[] {
  const seen = new Set<string>();
  return sound.flatMap((one) => {
    const { entry } = one;
    const key = `${one.source} ${targetOf(one) ?? entry.system} ${entry.unit ?? ''}`;
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    return [issue('duplicate-key', entry.path, { reason: 'map-row' }, { source: entry.position })];
  });
}

/** Lines from another system that can have no effect. */
function unreachedIssues(
  sound: readonly SoundEntry[],
  entriesOf: ReadonlyMap<string, AdopterEntry>,
): Issue[] {
  const reached = new Set<string>();
  for (const { codings } of entriesOf.values()) {
    for (const { system, code } of codings) reached.add(`${system}|${code}`);
  }
  return sound
    .filter(({ own, source }) => !own && !reached.has(source))
    .map(({ entry }) =>
      issue(
        'unresolved-key',
        pathOf(entry, 'code'),
        { reason: 'unreached' },
        {
          severity: 'warning',
          source: entry.position,
        },
      ),
    );
}

/** Two codes of one system can hardly both mean the same as the row. */
function rivalIssues(sound: readonly SoundEntry[]): Issue[] {
  const first = new Set<string>();
  return sound.flatMap(({ source, relation, entry }) => {
    if (relation !== 'equivalent' || entry.target === undefined) return [];
    const key = `${source} ${entry.system} ${entry.unit ?? ''}`;
    if (!first.has(key)) {
      first.add(key);
      return [];
    }
    const details = { severity: 'warning', source: entry.position } as const;
    return [
      issue('ambiguous-mapping', pathOf(entry, 'target'), { reason: 'two-equivalents' }, details),
    ];
  });
}
