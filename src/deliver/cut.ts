import type { Bundle, BundleEntry } from 'fhir/r4.js';
import { append } from '../data/append.ts';
import type { AnyBundle } from '../export/to-bundle.ts';
import { referencesIn, withReferences } from '../fhir/references.ts';
import { failure, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import { inOrderOfReference } from './order.ts';

/** The size of the bundles, and what the server takes. */
export interface CutOptions {
  /** Most entries of one bundle. */
  readonly most: number;
  /**
   * `transaction` (default): each bundle is stored whole or not at all. `batch`: for servers without
   * transactions; no entry refers to another one of its bundle.
   */
  readonly as?: 'transaction' | 'batch';
}

/**
 * Cuts a transaction into several bundles to be sent one after the other: what an entry refers to
 * stands in the same bundle or an earlier one, and the report comes last. Each of them can be sent
 * again without harm, so that a delivery that broke off can go on with the bundle at which it
 * stopped.
 *
 * References to earlier bundles name type and id, or the condition under which the target was
 * stored. Only transactions understand such a condition: a batch needs ids of ours, or the answers
 * of the server.
 *
 * @param bundle From `toBundle` with `bundleType: 'transaction'`.
 * @param options Most entries of a bundle, and whether the server takes transactions; see
 *   {@link CutOptions}.
 * @returns The bundles in the order to send. It fails where more entries refer to each other in a
 *   circle than one bundle may hold, and where a batch would refer by a condition.
 * @throws {RangeError} Where `most` is not a whole number from 1.
 * @example
 * const identity = 'https://clinic.example/records';
 * const transaction = toBundleOrThrow(exam, { bundleType: 'transaction', identity });
 * const pieces = orThrow('cut the transaction', cutBundle(transaction, { most: 50 }));
 * @see https://hl7.org/fhir/R4/http.html#transaction
 */
export function cutBundle(bundle: AnyBundle, options: CutOptions): Outcome<readonly AnyBundle[]> {
  const { value: pieces, issues } = piecesOf(bundle, options);
  if (pieces === undefined) return failure(issues);
  const places = placesAskedFor(bundle);
  if (options.as === 'batch') {
    const open = conditionalTargets(pieces, places);
    if (open.length > 0) return failure([...issues, ...open]);
  }
  return success(
    pieces.map((piece) => withPlaces(piece, places)),
    issues,
  );
}

/** The bundles with references as they were: by `urn:uuid:` also to what an earlier bundle holds. */
export function piecesOf(
  bundle: AnyBundle,
  { most, as = 'transaction' }: CutOptions,
): Outcome<readonly AnyBundle[]> {
  if (!Number.isSafeInteger(most) || most < 1) {
    throw new RangeError('cannot cut a bundle so: expected a whole number from 1 for most');
  }
  // One structure for all versions.
  const entries = (bundle.entry ?? []) as BundleEntry[];
  const groups = orderedGroups(entries);
  const limit = as === 'batch' ? 1 : most;
  const issues = groups.flatMap((group): Issue[] => {
    if (group.length <= limit) return [];
    const path = ['entry', group[0] ?? 0];
    return [issue('too-large', path, { reason: 'circle', count: group.length })];
  });
  if (issues.length > 0) return failure(issues);
  const lists = as === 'batch' ? byLevel(entries, groups, most) : filledUp(groups, most);
  const value = lists.map((places) => pieceOf(bundle, as, places));
  return success(value, issues);
}

/** A bundle whose references to what is not in it name the place where that is stored. */
export function withPlaces(piece: AnyBundle, places: ReadonlyMap<string, string>): AnyBundle {
  const inside = new Set((piece.entry ?? []).map(({ fullUrl }) => fullUrl));
  return withReferences(piece, (urn) => (inside.has(urn) ? undefined : places.get(urn)));
}

/** Where each entry asks to be stored, by its `fullUrl`: `Observation/1`, or a condition. */
export function placesAskedFor({ entry = [] }: AnyBundle): Map<string, string> {
  const places = new Map<string, string>();
  for (const { fullUrl, request } of entry) {
    if (fullUrl === undefined || request?.url === undefined) continue;
    const { url, ifNoneExist } = request;
    places.set(fullUrl, ifNoneExist === undefined ? url : `${url}?${ifNoneExist}`);
  }
  return places;
}

function orderedGroups(entries: readonly BundleEntry[]): readonly (readonly number[])[] {
  const places = new Map(entries.map(({ fullUrl }, at) => [fullUrl, at]));
  const referring = entries.map(({ resource }) => ({
    refersTo: [...referencesIn(resource)].flatMap((reference) => places.get(reference) ?? []),
  }));
  const rank = (at: number): number => {
    const type = entries[at]?.resource?.resourceType;
    return type === 'DiagnosticReport' ? 1 : type === 'Provenance' ? 2 : 0;
  };
  const first = [...entries.keys()].sort((a, b) => rank(a) - rank(b) || a - b);
  return inOrderOfReference(referring, first);
}

/** Lists of at most `most` places; a group is not torn apart. */
function filledUp(groups: readonly (readonly number[])[], most: number): number[][] {
  const lists: number[][] = [];
  for (const group of groups) {
    const last = lists.at(-1);
    if (last === undefined || last.length + group.length > most) lists.push([...group]);
    else append(last, group);
  }
  return lists;
}

/** The same, where a list holds nothing that refers to another place of it. */
function byLevel(
  entries: readonly BundleEntry[],
  groups: readonly (readonly number[])[],
  most: number,
): number[][] {
  const levels = new Map<string | undefined, number>();
  const lists: number[][][] = [];
  for (const [at = 0] of groups) {
    const { fullUrl, resource } = entries[at] ?? {};
    let level = 0;
    for (const reference of referencesIn(resource)) {
      const below = reference === fullUrl ? undefined : levels.get(reference);
      if (below !== undefined) level = Math.max(level, below + 1);
    }
    levels.set(fullUrl, level);
    const sameLevel = lists[level] ?? [];
    lists[level] = sameLevel;
    const last = sameLevel.at(-1);
    if (last === undefined || last.length === most) sameLevel.push([at]);
    else last.push(at);
  }
  return lists.flat();
}

function pieceOf(
  bundle: AnyBundle,
  type: 'transaction' | 'batch',
  places: readonly number[],
): AnyBundle {
  // The id is that of the whole.
  const { entry = [], id: _, ...head } = bundle;
  const piece = {
    ...head,
    type,
    entry: places.map((place) => entry[place]),
  };
  return piece as Bundle; // one structure for all versions
}

/** References to what only a condition names. */
function conditionalTargets(
  pieces: readonly AnyBundle[],
  places: ReadonlyMap<string, string>,
): Issue[] {
  const open = pieces.some(({ entry = [] }) =>
    entry.some(({ resource }) =>
      [...referencesIn(resource)].some((urn) => places.get(urn)?.includes('?')),
    ),
  );
  return open ? [issue('missing-property', ['entry'], { reason: 'batch-place' })] : [];
}
