import { type BudgetOption, within } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import { isTable } from '../mapping/source.ts';
import { companionNames, headNames, itemNames, madeNames } from '../prepare/names.ts';
import { prepareMapping } from '../prepare/prepare-mapping.ts';
import { readerFor } from '../reader-for.ts';
import { itemCodeOf } from '../record/record-drafts.ts';
import { readSample, type Sample } from '../suggest/guess/sample.ts';
import { nearName } from './near-name.ts';
import { hasNoHeadings } from './no-headings.ts';

export interface MisfitOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

/** Where a mapping names a field. */
export type MappingPart = 'source' | 'exam' | 'cells' | 'fields' | 'items' | 'layout' | 'text';

export interface MissingName {
  readonly name: string;
  readonly part: MappingPart;
  /** A name of the export that the mapping does not know and that is spelt almost alike. */
  readonly near?: string;
}

export interface UnnamedField {
  readonly name: string;
  /** How often it holds anything. */
  readonly filled: number;
}

export interface UnlistedItem {
  readonly code: string;
  readonly count: number;
  /** A code of the mapping that did not come and is spelt almost alike. */
  readonly near?: string;
}

/** What no longer fits between a mapping and an export. */
export interface Misfits {
  /** Names of the mapping that the export does not have. */
  readonly missing: readonly MissingName[];
  /** Fields of the export that the mapping does not name: they are kept as text. */
  readonly unnamed: readonly UnnamedField[];
  /** Items of the export that no map of the mapping lists: they are kept as text. */
  readonly unlisted: readonly UnlistedItem[];
  /** Codes that the mapping lists and that did not come. */
  readonly unmet: readonly string[];
  /** The first row of the table looks like data, so that no name can be found. */
  readonly headless: boolean;
  /** What is wrong with the mapping or the text; the lists are empty where it cannot be used. */
  readonly issues: readonly Issue[];
}

/**
 * Compares a mapping with a new export of the same system: what of the mapping is not found, what of
 * the export it does not name, and names that look renamed. Nothing is renamed by itself: a name is never
 * near one of another side, unit, number or denial.
 *
 * @param text The export or its beginning, decoded.
 * @param mapping The mapping that fitted before.
 * @param options The catalogue and the budget.
 * @returns What does not fit. A mapping that cannot be used gives issues alone.
 * @example
 * const { missing, unnamed } = misfits(text, mapping);
 * for (const { name, near } of missing) console.log(name, 'is gone; perhaps', near);
 */
export function misfits(
  text: string,
  mapping: WrittenMapping,
  options: MisfitOptions = {},
): Misfits {
  return within(
    'legacy',
    options.budget,
    () => found(text, mapping, options),
    (why) => ({ ...none, issues: [endedIssue(why)] }),
  );
}

const none: Misfits = {
  ...{ missing: [], unnamed: [], unlisted: [], unmet: [], headless: false, issues: [] },
};

function found(text: string, mapping: WrittenMapping, options: MisfitOptions): Misfits {
  const long = longTextIssues(text);
  if (long.length > 0) return { ...none, issues: long };
  const { value: plan, issues } = prepareMapping(mapping, options);
  if (plan === undefined) return { ...none, issues };
  const { source } = plan.mapping;
  const sample = readSample(text, readerFor(source));
  if (hasNoHeadings(source, sample)) return { ...none, headless: true, issues };
  const uses = new Map(usesOf(plan));
  const stated = textsIn(mapping);
  const unnamed = [...sample.fields.values()]
    .filter(({ name }) => !uses.has(name))
    .map(({ name, texts }) => ({ name, filled: texts.length }));
  const free = unnamed.map(({ name }) => name);
  const missing = [...uses]
    // Presets and standards name what may come; only what the mapping says itself is missed.
    .filter(([name, part]) => !sample.fields.has(name) && part !== 'layout' && stated.has(name))
    .filter(([name]) => !isMade(name, plan))
    .map(([name, part]) => ({ name, part, ...nearOf(name, free) }));
  return { missing, unnamed, ...itemMisfits(sample, plan), headless: false, issues };
}

function nearOf(name: string, others: readonly string[]): { readonly near?: string } {
  const near = nearName(name, others);
  return near === undefined ? {} : { near };
}

function isMade(name: string, { mapping }: Plan): boolean {
  return (mapping.cells ?? []).some((operation) => madeNames(operation).includes(name));
}

/** Every name that a mapping gives a use. */
function usesOf({ mapping }: Plan): readonly (readonly [name: string, part: MappingPart])[] {
  const { source, exam, cells = [], fields = {}, items = [], layout = [], text = [] } = mapping;
  const grouped = isTable(source) ? [...(source.groupBy ?? []), ...(source.fillDown ?? [])] : [];
  const named = (part: MappingPart, names: readonly string[]): [string, MappingPart][] =>
    names.map((name) => [name, part]);
  return [
    ...named('text', text),
    ...named('layout', layout),
    ...named('source', grouped),
    ...named('items', items.flatMap(itemNames)),
    ...named(
      'fields',
      Object.entries(fields).flatMap(([name, one]) => [name, ...companionNames(one)]),
    ),
    ...named(
      'cells',
      cells.flatMap((one) => [one.from, ...madeNames(one)]),
    ),
    ...named('exam', headNames(exam)),
  ];
}

/** Every text and name of a mapping as it is written. */
function textsIn(value: unknown): ReadonlySet<string> {
  const texts = new Set<string>();
  const waiting: unknown[] = [value];
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
    if (typeof one === 'string') texts.add(one);
    if (typeof one !== 'object' || one === null) continue;
    for (const [name, part] of Object.entries(one)) {
      texts.add(name);
      waiting.push(part);
    }
  }
  return texts;
}

function itemMisfits({ records }: Sample, plan: Plan): Pick<Misfits, 'unlisted' | 'unmet'> {
  const met = new Set<string>();
  const counts = new Map<string, number>();
  for (const record of records) {
    const item = itemCodeOf(record, plan);
    if (item === undefined) continue;
    if (item.isListed) met.add(item.code);
    else counts.set(item.code, (counts.get(item.code) ?? 0) + 1);
  }
  const unmet = (plan.mapping.items ?? [])
    .flatMap(({ map }) => Object.keys(map))
    .filter((code) => !met.has(code));
  const unlisted = [...counts].map(([code, count]) => ({ code, count, ...nearOf(code, unmet) }));
  return { unlisted, unmet: unlisted.length === 0 && met.size === 0 ? [] : unmet };
}
