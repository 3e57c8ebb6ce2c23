import type { Issue } from '../../issues/issue.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { issue } from '../issue.ts';
import type { WordTable } from '../mapping/mapping.ts';
import type { Source } from '../mapping/source.ts';
import type { Target } from '../mapping/target.ts';
import { prepareMapping } from '../prepare/prepare-mapping.ts';
import { readerFor } from '../reader-for.ts';
import { examPart } from './exam-part.ts';
import { guessSource } from './guess-source.ts';
import { ambiguousWords, guessWords } from './guess-words.ts';
import { headNamesOf, type ItemNames, itemNamesOf } from './head-names.ts';
import { type NameIndex, nameIndex, nearNames, placeName } from './place-name.ts';
import { answersOf, readSample, type Sample, type SampleField } from './sample.ts';

/** How the sample is read. */
export interface SuggestOptions {
  /** How the sample is read. Default: as its beginning shows, with delimiter and grouping of CSV. */
  readonly source?: Source;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
}

/** A first mapping, to be finished by a person. */
export interface Suggestion {
  /** In the form of a mapping, without the parts that the sample cannot tell. */
  readonly mapping: { readonly [part: string]: unknown };
  /** What could not be placed, what has two readings, and what the mapping still lacks. */
  readonly issues: readonly Issue[];
}

/**
 * A first mapping for an export, from a sample of it. Only names that are codes or displays of the
 * catalogue are placed and only plain words get a meaning; everything else is left open and listed.
 */
export function suggestMapping(text: string, options: SuggestOptions = {}): Suggestion {
  const catalogue = options.catalogue ?? builtInCatalogue;
  const source = options.source ?? guessSource(text);
  if (source.syntax === 'xml' && source.exam === '') return withoutExamElement(source);
  const sample = readSample(text, readerFor(source));
  const names = [...sample.fields.keys()];
  const heads = headNamesOf(source, names);
  const items = itemNamesOf(source, names);
  const index = nameIndex(catalogue);
  const open: Issue[] = [];
  const exam = examPart(heads, sample, open);

  const taken = new Set<string>([
    ...Object.values(heads),
    ...items.flatMap(({ kind, ...roles }) => Object.values(roles)),
  ]);
  const free = [...sample.fields.values()].filter(({ name }) => !taken.has(name));
  const itemParts = items.map((roles) => itemPart(roles, sample, index, catalogue, open));
  const mapping = {
    format: 'face-neck-mapping/1',
    source,
    ...exam,
    ...filled('fields', fieldPart(free, index, catalogue, open)),
    ...(itemParts.length > 0 && { items: itemParts }),
    ...filled('sides', sideWords(items, sample)),
    ...filled('units', unitWords(items, sample)),
  };
  const { issues } = prepareMapping(mapping, { catalogue });
  return { mapping, issues: [...open, ...issues] };
}

function withoutExamElement(source: Source): Suggestion {
  const open = issue('missing-property', ['source', 'exam'], { reason: 'exam-element' });
  return { mapping: { format: 'face-neck-mapping/1', source }, issues: [open] };
}

function filled(name: string, part: object): object {
  return Object.keys(part).length === 0 ? {} : { [name]: part };
}

function fieldPart(
  fields: readonly SampleField[],
  index: NameIndex,
  catalogue: Catalogue,
  open: Issue[],
): { readonly [name: string]: Target } {
  const placed: [string, Target][] = [];
  for (const field of fields) {
    const target = placeName(field.name, index);
    if (target === undefined) {
      open.push(unplaced(field.name, 'nothing-near-field', catalogue));
    } else placed.push([field.name, withWords(target, field, catalogue, open)]);
  }
  return Object.fromEntries(placed);
}

function itemPart(
  { display, ...roles }: ItemNames,
  sample: Sample,
  index: NameIndex,
  catalogue: Catalogue,
  open: Issue[],
): object {
  const { kind, code, value, ...others } = roles;
  const map = new Map<string, Target>();
  for (const [item, { words, label }] of itemsOf(code, display, value, sample)) {
    const target = placeName(item, index) ?? placeName(label, index);
    if (target === undefined) open.push(unplaced(item, 'nothing-near-item', catalogue));
    else {
      const field: SampleField = {
        name: item,
        texts: words,
        words: [...new Set(words)],
        blanks: 0,
      };
      map.set(item, withWords(target, field, catalogue, open));
    }
  }
  const present = Object.entries(others).filter(([, name]) => sample.fields.has(name));
  return {
    ...(kind !== undefined && { kind }),
    code: [code],
    value,
    ...Object.fromEntries(present),
    map: Object.fromEntries(map),
  };
}

/** Items of a sample by their code, with their values and the code in words. */
function itemsOf(
  code: string | undefined,
  display: string | undefined,
  value: string | undefined,
  sample: Sample,
): ReadonlyMap<string, { readonly words: string[]; readonly label: string }> {
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

function withWords(
  target: Target,
  field: SampleField,
  catalogue: Catalogue,
  open: Issue[],
): Target {
  if (!('words' in target)) return target;
  const answers = answersOf(field);
  if (answers === undefined) {
    open.push(issue('unknown-word', [field.name], { reason: 'many-answers' }));
    return target;
  }
  const words: WordTable = guessWords(answers, target, catalogue);
  for (const [word, meaning] of Object.entries(words)) {
    if (meaning !== 'text') continue;
    const readings = ambiguousWords.get(word.toLowerCase());
    const facts =
      readings === undefined
        ? ({ reason: 'open' } as const)
        : ({ reason: 'several-readings', codes: [readings] } as const);
    open.push(issue('unknown-word', [field.name, word], facts, { severity: 'warning' }));
  }
  return { ...target, words };
}

/** Side words that are plain; others are left for a person. */
function sideWords(
  items: readonly ItemNames[],
  sample: Sample,
): { readonly [word: string]: string } {
  const plain = new Map([
    ['r', 'right'],
    ['right', 'right'],
    ['l', 'left'],
    ['left', 'left'],
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
function unitWords(
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

function unplaced(
  name: string,
  reason: 'nothing-near-field' | 'nothing-near-item',
  catalogue: Catalogue,
): Issue {
  const facts = { reason, codes: nearNames(name, catalogue) };
  return issue('unmapped-field', [name], facts, { severity: 'warning' });
}
