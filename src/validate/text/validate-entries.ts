import { endsLook } from '../../data/plain-data.ts';
import type { TextPosition } from '../../data/text-position.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { type BudgetOption, bounds, within } from '../../issues/budget.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import { type BundleIndex, createIndex } from '../bundles/bundle-index.ts';
import { schemaIssues } from '../elements/schema.ts';
import {
  type Conformance,
  checkOptions,
  createScope,
  outermost,
  profilesOf,
  unreadable,
  type ValidateOptions,
  type Validation,
  validationOf,
} from '../validate-bundle.ts';
import type { ValidatedVersion } from '../versions/version.ts';
import { isObject, type JsonObject, listOf } from '../walk/json.ts';
import type { Scope, Unchecked } from '../walk/scope.ts';
import { visitEntry, visitResource, withoutEntries } from '../walk/walk.ts';
import { bundleOf, outlineOf } from './entry-outline.ts';
import { type EntryText, type Frame, splitEntries, TooLong } from './split-entries.ts';
import { locatedInJson } from './validate-text.ts';

/** The verdict on one entry, or, as the last, on the bundle around them. */
export interface EntryValidation extends Validation {
  /** Number of the entry from 0; none for the bundle. */
  readonly entry?: number;
  /** Of the bundle: the worst verdict on it and its entries. */
  readonly whole?: Conformance;
}

/** Gives the text from its beginning, in pieces cut anywhere; it is asked for twice. */
export type TextSource = () => Iterable<string> | AsyncIterable<string>;

/**
 * Validates a bundle entry by entry: first its entries are gone through for what others can refer to,
 * then each is looked at alone, and at last the bundle without what its entries hold.
 */
export async function* runOnEntries(
  source: TextSource,
  version: ValidatedVersion,
  given: ValidateOptions = {},
): AsyncGenerator<EntryValidation, void, undefined> {
  checkOptions(version, given);
  const compiling: Issue[] = [];
  const profiles = profilesOf(given, version, compiling);
  const options = { ...given, ...(profiles && { profiles }) };
  const first = await frameAndOutlines(source, options.budget);
  if ('issues' in first) {
    yield { ...unreadable(first.issues, version, options), whole: 'does-not-conform' };
    return;
  }
  const { head, outlines } = first;
  const bundle = bundleOf(head, outlines);
  const index: BundleIndex = { ...createIndex(bundle), onlyIds: { missed: false } };
  const looking: Looking = { version, options, bundle, index };
  let whole: Conformance = 'conforms';
  for await (const each of splitEntries(source(), longest(options.budget))) {
    const validation = onEntry(each, looking);
    whole = worse(whole, validation.conformance);
    yield { ...validation, entry: each.number };
  }
  const around = onFrame(first, compiling, looking);
  yield { ...around, whole: worse(whole, around.conformance) };
}

interface Looking {
  readonly version: ValidatedVersion;
  readonly options: ValidateOptions;
  readonly bundle: JsonObject;
  readonly index: BundleIndex;
}

interface Outlined {
  readonly frame: Frame;
  /** The bundle without its entries. */
  readonly head: JsonObject;
  readonly reading: readonly Issue[];
  readonly outlines: readonly unknown[];
  /** Where each entry begins. */
  readonly starts: readonly TextPosition[];
}

async function frameAndOutlines(
  source: TextSource,
  budget: BudgetOption | undefined,
): Promise<Outlined | { readonly issues: readonly Issue[] }> {
  const most = longest(budget);
  const outlines: unknown[] = [];
  const starts: TextPosition[] = [];
  try {
    const entries = splitEntries(source(), most);
    let next = await entries.next();
    for (; next.done !== true; next = await entries.next()) {
      outlines.push(outlineOf(next.value.text));
      starts.push(next.value.start);
    }
    const frame = next.value;
    const { value, issues } = fromJson(frame.text, budget && { budget });
    const placed = issues.map((found) => inWhole(found, frame.inWhole));
    if (value === undefined) return { issues: placed };
    if (!isObject(value) || value['resourceType'] !== 'Bundle') return { issues: [tooLong(most)] };
    const { entry, ...rest } = value;
    const head = outlines.length === 0 && entry !== undefined ? value : rest;
    return { frame, head, reading: placed, outlines, starts };
  } catch (thrown) {
    if (thrown instanceof TooLong) return { issues: [tooLong(most)] };
    throw thrown;
  }
}

function tooLong(most: number): Issue {
  return issue('too-large', [], { reason: 'document', maximum: most });
}

function longest(budget: BudgetOption | undefined): number {
  return within(
    'json',
    budget,
    () => bounds().characters,
    () => 0,
  );
}

function onEntry({ number, text, start }: EntryText, looking: Looking): Validation {
  const { version, options } = looking;
  const { budget } = options;
  const { value, issues } = fromJson(text, budget && { budget });
  const below = (found: Issue): Issue => ({
    ...inWhole(found, (position) => behind(start, position)),
    path: ['entry', number, ...found.path],
  });
  if (value === undefined) {
    const { issues: told, ...verdict } = unreadable(issues, version, options);
    return { ...verdict, issues: told.map(below) };
  }
  const verdict = within(
    'resource',
    budget,
    () => lookedAt(value, number, looking, issues, text),
    (why) => unreadable([endedIssue(why)], version, options),
  );
  return {
    ...verdict,
    issues: verdict.issues.map(below),
    unchecked: verdict.unchecked.map((one) => ({ ...one, path: ['entry', number, ...one.path] })),
  };
}

/** What is found, with paths from the entry on. */
function lookedAt(
  value: unknown,
  number: number,
  { version, options, bundle, index }: Looking,
  reading: readonly Issue[],
  text: string,
): Validation {
  const alone = { resourceType: 'Bundle', type: 'collection', entry: [value] };
  const structure = schemaIssues(alone, version, options);
  const issues = structure.map((found) => ({ ...found, path: at(number, found.path) }));
  const scope: Scope = {
    ...createScope(bundle, issues, version, options, profilesOf(options, version, issues), index),
    entry: number,
    path: ['entry', number],
  };
  if (!issues.some(endsLook)) {
    const entry = index.entries[number];
    const outline = entry?.resource;
    // While it is looked at, what refers to it from inside finds it whole.
    if (entry !== undefined && isObject(value) && isObject(value['resource']))
      entry.resource = value['resource'];
    visitEntry(value, scope, version.plan);
    if (entry !== undefined) entry.resource = outline;
  }
  const inside = ({ path }: { readonly path: Path }): Path => path.slice(2);
  const found = [...reading, ...scope.issues.map((one) => ({ ...one, path: inside(one) }))];
  const unchecked = scope.unchecked.map((one) => ({ ...one, path: inside(one) }));
  const source = { issues: reading, located: locatedInJson(text) };
  return validationOf(found, unchecked, { bundle: value, version, options, text: source });
}

function at(number: number, path: Path): Path {
  return path[0] === 'entry' && path.length > 1 ? ['entry', number, ...path.slice(2)] : path;
}

/** The bundle itself, its links and what its entries are to each other. */
function onFrame(first: Outlined, compiling: readonly Issue[], looking: Looking): Validation {
  const { version, options, bundle, index } = looking;
  return within(
    'resource',
    options.budget,
    () => {
      const told = [...first.reading, ...compiling];
      const issues = [...told, ...schemaIssues(first.head, version, options)];
      const { profile: claims, ...meta } = isObject(bundle['meta']) ? bundle['meta'] : {};
      const rest = claims === undefined ? bundle : { ...bundle, meta };
      const scope: Scope = {
        ...createScope(rest, issues, version, { ...options, level: 'fast' }, undefined),
        index: { ...index, bundle: rest },
      };
      visitResource(rest, scope, withoutEntries(version.plan), outermost);
      const unchecked = [...scope.unchecked, ...passedOver(claims, looking)];
      const text = { issues: told, located: (found: readonly Issue[]) => placed(found, first) };
      return validationOf(scope.issues, unchecked, { bundle, version, options, text });
    },
    (why) => unreadable([endedIssue(why)], version, options),
  );
}

/** What is told of an entry stands where that begins. */
function placed(found: readonly Issue[], { frame, starts }: Outlined): readonly Issue[] {
  const around = locatedInJson(frame.text)(found.filter((each) => entryOf(each) === undefined));
  const next = around[Symbol.iterator]();
  return found.map((each) => {
    const entry = entryOf(each);
    if (entry === undefined) return inWhole(next.next().value ?? each, frame.inWhole);
    const source = starts[entry];
    return source === undefined ? each : { ...each, source };
  });
}

function entryOf({ path: [first, number] }: Issue): number | undefined {
  return first === 'entry' && typeof number === 'number' ? number : undefined;
}

/** What cannot be told of a bundle without all of it. */
function passedOver(profile: unknown, { index }: Looking): Unchecked[] {
  const ofClaims = listOf(profile).flatMap((rule, place): Unchecked[] =>
    typeof rule === 'string'
      ? [
          {
            rule,
            path: ['meta', 'profile', place],
            why: 'a bundle that is looked at entry by entry is not held to profiles',
          },
        ]
      : [],
  );
  if (index.onlyIds?.missed !== true) return ofClaims;
  const why = 'of what stands in another entry only type and id are held, entry by entry';
  return [
    ...ofClaims,
    { rule: 'https://hl7.org/fhir/R4/bundle.html#references', path: ['entry'], why },
  ];
}

function worse(one: Conformance, other: Conformance): Conformance {
  const order: readonly Conformance[] = ['conforms', 'not-fully-checked', 'does-not-conform'];
  return order.indexOf(one) < order.indexOf(other) ? other : one;
}

function behind(start: TextPosition, { line, column }: TextPosition): TextPosition {
  return line === 1
    ? { line: start.line, column: start.column + column - 1 }
    : { line: start.line + line - 1, column };
}

function inWhole(found: Issue, place: (position: TextPosition) => TextPosition): Issue {
  const { source } = found;
  if (source === undefined || !('line' in source)) return found;
  const { line, column = 1 } = source;
  return { ...found, source: { ...source, ...place({ line, column }) } };
}
