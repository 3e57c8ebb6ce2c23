import { type BudgetOption, within } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { issue } from '../issue.ts';
import type { Source } from '../mapping/source.ts';
import type { Target } from '../mapping/target.ts';
import { prepareMapping } from '../prepare/prepare-mapping.ts';
import { readerFor } from '../reader-for.ts';
import { guessSource } from './guess/guess-source.ts';
import { readSample, type Sample } from './guess/sample.ts';
import { examPart } from './names/exam-part.ts';
import {
  type HeadNames,
  headNamesOf,
  type ItemNames,
  itemNamesOf,
  labelOf,
} from './names/head-names.ts';
import { sidePairsOf } from './names/name-parts.ts';
import { phraseIndex } from './names/phrase-index.ts';
import type { Naming } from './names/side-and-unit.ts';
import type { HeadUse, ItemUse } from './names/use-words.ts';
import type { Proposal, ProposalQuestion } from './proposal.ts';
import { fieldProposal, proposalOf } from './propose.ts';

/** How the sample is read. */
export interface SuggestOptions {
  /** How the sample is read. Default: as its beginning shows, with delimiter and grouping of CSV. */
  readonly source?: Source;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

/** A first mapping, to be finished by a person. */
export interface Suggestion {
  /** In the form of a mapping, without the parts that the sample cannot tell. */
  readonly mapping: { readonly [part: string]: unknown };
  /** What could not be placed, what has two readings, and what the mapping still lacks. */
  readonly issues: readonly Issue[];
  /** Each field and item with what it could be, how sure that is, why, and what is still asked. */
  readonly proposals: readonly Proposal[];
}

/**
 * A first mapping for an export, from a sample of it. A name is placed where the lexicon knows all of it:
 * English and German displays, synonyms, lay words and abbreviations, with typing errors. A side, a
 * denial, a unit and the order of day and month are never guessed: what does not state them stays open
 * and is asked. Only plain words get a meaning.
 *
 * @param text The beginning of an export, decoded: a few exams are enough.
 * @param options How the sample is read, and the catalogue; see {@link SuggestOptions}.
 * @returns A mapping to be finished, what is open in it, and the proposal for each field. Where the text
 *   cannot be read, an empty mapping with issues.
 * @example
 * const { mapping, proposals } = suggestMapping(text);
 */
export function suggestMapping(text: string, options: SuggestOptions = {}): Suggestion {
  return within(
    'legacy',
    options.budget,
    () => suggested(text, options),
    (why) => ({ mapping: {}, issues: [endedIssue(why)], proposals: [] }),
  );
}

function suggested(text: string, options: SuggestOptions): Suggestion {
  const long = longTextIssues(text);
  if (long.length > 0) return { mapping: {}, issues: long, proposals: [] };
  const source = options.source ?? guessSource(text);
  if (source.syntax === 'xml' && source.exam === '') return withoutExamElement(source);
  return suggestFor(readSample(text, readerFor(source)), source, options);
}

/** The same for a sample that was read already. */
export function suggestFor(
  sample: Sample,
  source: Source,
  { catalogue = builtInCatalogue }: Pick<SuggestOptions, 'catalogue'>,
): Suggestion {
  const index = phraseIndex(catalogue);
  const fields = [...sample.fields.values()];
  const heads = headNamesOf(source, fields, index.respell);
  const items = itemNamesOf(source, fields, index.respell);
  const open: Issue[] = [];
  const exam = examPart(heads, sample, open);
  const listed = items.map((roles) => itemsOf(roles, sample));
  const names = [...sample.fields.keys(), ...listed.flatMap((codes) => [...codes.keys()])];
  const naming: Naming = { index, catalogue, pairs: sidePairsOf(names) };
  const uses = useProposals(source, heads, items, sample);
  const taken = new Set(uses.map(({ name }) => name));
  const free = fields.filter(({ name }) => !taken.has(name));
  const placed = free.map((field) =>
    fieldProposal(field, labelOf(source, field.name), naming, open),
  );
  const itemParts = items.map((roles, at) =>
    itemPart(roles, listed[at] ?? new Map(), sample, naming, open),
  );
  const mapping = {
    format: 'face-neck-mapping/1',
    source,
    ...exam,
    ...filled('fields', targetsOf(placed)),
    ...(itemParts.length > 0 && { items: itemParts.map(({ part }) => part) }),
    ...filled('sides', sideMeanings(items, sample)),
    ...filled('units', unitMeanings(items, sample)),
  };
  const { issues } = prepareMapping(mapping, { catalogue });
  const asked = askedOf(open);
  return {
    mapping,
    issues: [...open, ...issues],
    proposals: [
      ...uses.map((one) => ({ ...one, questions: asked.get(one.name) ?? [] })),
      ...placed,
      ...itemParts.flatMap(({ proposals }) => proposals),
    ],
  };
}

export function withoutExamElement(source: Source): Suggestion {
  const open = issue('missing-property', ['source', 'exam'], { reason: 'exam-element' });
  return { mapping: { format: 'face-neck-mapping/1', source }, issues: [open], proposals: [] };
}

function filled(name: string, part: object): object {
  return Object.keys(part).length === 0 ? {} : { [name]: part };
}

function targetsOf(proposals: readonly Proposal[]): { readonly [name: string]: Target } {
  return Object.fromEntries(
    proposals.flatMap(({ name, target }) => (target === undefined ? [] : [[name, target]])),
  );
}

/** Fields with a use besides statements. */
function useProposals(
  source: Source,
  heads: HeadNames,
  items: readonly ItemNames[],
  sample: Sample,
): readonly Proposal[] {
  const isStandard = source.syntax === 'hl7v2' || source.syntax === 'cda';
  const shared = {
    of: 'field' as const,
    score: isStandard ? 1 : 0.9,
    reasons: [{ reason: isStandard ? ('standard' as const) : ('usual-name' as const) }],
    questions: [],
    offers: [],
  };
  const there = ([, name]: readonly [string, string]): boolean => sample.fields.has(name);
  // Both are records of names by use.
  const headUses = (Object.entries(heads) as [HeadUse, string][]).filter(there);
  const roles = items.flatMap(({ kind: _kind, display, ...others }) => [
    ...(Object.entries(others) as [ItemUse, string][]),
    ...(display === undefined ? [] : [['code', display] as [ItemUse, string]]),
  ]);
  return [
    ...headUses.map(([head, name]) => ({ ...shared, name, head })),
    ...roles.filter(there).map(([role, name]) => ({ ...shared, name, role })),
  ];
}

interface ItemPart {
  readonly part: object;
  readonly proposals: readonly Proposal[];
}

function itemPart(
  { display: _display, ...roles }: ItemNames,
  listed: Listed,
  sample: Sample,
  naming: Naming,
  open: Issue[],
): ItemPart {
  const { kind, code, value, ...others } = roles;
  const present = Object.entries(others).filter(([, name]) => sample.fields.has(name));
  const beside = {
    side: others.side !== undefined && sample.fields.has(others.side),
    unit: others.unit !== undefined && sample.fields.has(others.unit),
  };
  const proposals = [...listed].map(([item, { words, label }]) => {
    const field = { name: item, texts: words, words: [...new Set(words)], blanks: 0 };
    return proposalOf('item', item, label, field, { ...naming, beside }, open);
  });
  const part = {
    ...(kind !== undefined && { kind }),
    code: [code],
    value,
    ...Object.fromEntries(present),
    map: targetsOf(proposals),
  };
  return { part, proposals };
}

type Listed = ReadonlyMap<string, { readonly words: string[]; readonly label: string }>;

/** Items of a sample by their code, with their values and the code in words. */
export function itemsOf({ code, display, value }: ItemNames, sample: Sample): Listed {
  const items = new Map<string, { words: string[]; label: string }>();
  for (const { fields } of sample.records) {
    const text = (name: string | undefined): string =>
      fields.find((field) => field.name === name)?.text.trim() ?? '';
    const item = text(code);
    if (item === '') continue;
    const known = items.get(item) ?? { words: [], label: text(display) };
    items.set(item, known);
    if (text(value) !== '') known.words.push(text(value));
  }
  return items;
}

/** Questions about fields that the issues tell: the order of day and month. */
function askedOf(open: readonly Issue[]): ReadonlyMap<string, readonly ProposalQuestion[]> {
  return new Map(
    open.flatMap(({ path, facts }): [string, ProposalQuestion[]][] =>
      facts !== undefined && 'reason' in facts && facts.reason === 'day-or-month'
        ? [[String(path[0]), [{ question: 'day-or-month', forms: facts.codes }]]]
        : [],
    ),
  );
}

/** Side words that are plain; others are left for a person. */
function sideMeanings(
  items: readonly ItemNames[],
  sample: Sample,
): { readonly [word: string]: string } {
  const plain = new Map([
    ['r', 'right'],
    ['right', 'right'],
    ['l', 'left'],
    ['left', 'left'],
    ['rechts', 'right'],
    ['links', 'left'],
    ['beidseits', 'both'],
    ['both', 'both'],
    ['bilateral', 'both'],
  ]);
  return listed(
    items.map(({ side }) => side),
    sample,
    plain,
  );
}

/** Unit words that are UCUM codes as they stand. */
function unitMeanings(
  items: readonly ItemNames[],
  sample: Sample,
): { readonly [word: string]: string } {
  const codes = new Map(['mm', 'cm', 's', 'deg', '%'].map((code) => [code, code]));
  return listed(
    items.map(({ unit }) => unit),
    sample,
    codes,
  );
}

function listed(
  names: readonly (string | undefined)[],
  sample: Sample,
  meanings: ReadonlyMap<string, string>,
): { readonly [word: string]: string } {
  const words = names.flatMap((name) => sample.fields.get(name ?? '')?.words ?? []);
  return Object.fromEntries(
    words.flatMap((word) => {
      const meaning = meanings.get(word.toLowerCase());
      return meaning === undefined ? [] : [[word, meaning]];
    }),
  );
}
