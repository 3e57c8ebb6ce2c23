import type { BundleEntry } from 'fhir/r4.js';
import { v5 } from 'uuid';
import type { AnyBundle } from '../export/to-bundle.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { failure, type Outcome, success } from '../issues/issue.ts';
import { type EntryAnswer, isById, isStored } from './answer.ts';
import type { AnswerDeviation } from './answer-faults.ts';
import { type CutOptions, piecesOf, placesAskedFor, withPlaces } from './cut.ts';
import { deviationsIn, type Judged, judge } from './judge.ts';
import { connect, type Exchange, type FhirServer } from './server.ts';

/** How far a delivery has come, as plain data to be kept with the bundle in an outbox. */
export interface DeliveryState {
  /** Tells the bundle and its cut from others. */
  readonly content: string;
  /** How many bundles of the cut the server has stored. */
  readonly sent: number;
  /** Where the server keeps what it has stored, by `fullUrl`. */
  readonly places: Readonly<Record<string, string>>;
  /** Versions of what is there, by place: `{ 'DiagnosticReport/1': 'W/"3"' }`. */
  readonly versions: Readonly<Record<string, string>>;
}

export interface DeliverOptions extends Partial<CutOptions> {
  /**
   * State of an earlier delivery. Of the same bundle: it goes on where that stopped. Of an earlier
   * version of the exam: what was stored then is written over only while it still has the version
   * known, so that what comes late cannot undo what came after it.
   */
  readonly state?: DeliveryState | undefined;
  /** Called after each bundle that was stored, and awaited: the place to keep the state. */
  readonly onProgress?: (state: DeliveryState) => Promise<void> | void;
}

/** What became of a delivery. */
export interface Delivery extends Judged {
  /** To be given to the next delivery of this exam, whatever the result. */
  readonly state: DeliveryState;
  /** Every request and its answer, for a log. */
  readonly exchanges: readonly Exchange[];
  /** What was not as FHIR has it in the answers, and did no harm; each once. */
  readonly deviations: readonly AnswerDeviation[];
}

/** Namespace of the digests of contents. */
const CONTENTS = 'b3b1c1f2-5a0e-4c7e-9a55-0d5e1c7f2a10';

/**
 * Sends a transaction to a server, whole or cut to size. Sending again does no harm: everything is
 * updated by id, or matched.
 *
 * @param bundle From `toBundle` with `bundleType: 'transaction'`.
 * @param server Its base, and how requests are made.
 * @param options The size of the bundles, and the state of an earlier delivery to go on with.
 * @returns What became of it. Nothing throws for what a server does; it fails where the bundle
 *   cannot be cut.
 * @example
 * const delivery = await deliver(bundle, { base: 'https://clinic.example/fhir' });
 * @see https://hl7.org/fhir/R4/http.html#transaction
 */
export async function deliver(
  bundle: AnyBundle,
  server: FhirServer,
  options: DeliverOptions = {},
): Promise<Outcome<Delivery>> {
  const cut = { most: options.most ?? Number.MAX_SAFE_INTEGER, as: options.as ?? 'transaction' };
  const { value: pieces, issues } = piecesOf(bundle, cut);
  if (pieces === undefined) return failure(issues);
  const connection = connect(server);
  const content = v5(`${cut.most} ${cut.as} ${toJson(bundle)}`, CONTENTS);
  let state = stateAtStart(content, options.state);
  const asked = placesAskedFor(bundle);
  const whole = pieces.length === 1 && cut.as === 'transaction';
  const deviations = new Set<AnswerDeviation>();
  const ended = (judged: Judged): Outcome<Delivery> =>
    success(
      { ...judged, state, deviations: [...deviations], exchanges: connection.exchanges },
      issues,
    );

  const send = async (piece: AnyBundle): Promise<Judged> => {
    if (piece.entry?.length === 0) return { result: 'stored' };
    const known = new Map([...asked, ...Object.entries(state.places)]);
    const text = toJson(withVersions(withPlaces(piece, known), state.versions, whole));
    const answer = await connection.send({ method: 'POST', path: '', body: text });
    const { answers, ...judged } = judge(answer, piece, state.places, server.now?.() ?? Date.now());
    state = noted(state, piece, answers, whole);
    for (const deviation of deviationsIn(answer, piece, answers)) deviations.add(deviation);
    return judged;
  };

  while (state.sent < pieces.length) {
    const piece = pieces[state.sent];
    if (piece === undefined) break;
    const rest = cut.as === 'batch' ? withoutStored(piece, state.places) : piece;
    const judged = await send(rest);
    if (judged.result !== 'stored') return ended(judged);
    state = { ...state, sent: state.sent + 1 };
    await options.onProgress?.(state);
  }
  return ended({ result: 'stored' });
}

function stateAtStart(content: string, before: DeliveryState | undefined): DeliveryState {
  if (before?.content === content) return before;
  return { content, sent: 0, places: {}, versions: before?.versions ?? {} };
}

/** What a batch has stored in part is not sent again: a server may forget that it matches. */
function withoutStored(piece: AnyBundle, places: DeliveryState['places']): AnyBundle {
  const entries = (piece.entry ?? []) as BundleEntry[]; // one structure for all versions
  const entry = entries.filter(({ fullUrl = '' }) => !Object.hasOwn(places, fullUrl));
  return { ...piece, entry } as AnyBundle;
}

/** Whether the version of an entry is kept and named: of a whole transaction the report guards all. */
export function isGuarded({ request, resource }: BundleEntry, whole: boolean): boolean {
  if (!isById(request)) return false;
  return !whole || resource?.resourceType === 'DiagnosticReport';
}

/** @see https://hl7.org/fhir/R4/http.html#concurrency */
function withVersions(
  piece: AnyBundle,
  versions: DeliveryState['versions'],
  whole: boolean,
): AnyBundle {
  // One structure for all versions.
  const entries = (piece.entry ?? []) as BundleEntry[];
  const entry = entries.map((one) => {
    const { request } = one;
    const ifMatch = request && isGuarded(one, whole) ? versions[request.url] : undefined;
    return ifMatch === undefined ? one : { ...one, request: { ...request, ifMatch } };
  });
  return { ...piece, entry } as AnyBundle;
}

/** The state with what the answers to a bundle tell of the entries that are stored. */
function noted(
  state: DeliveryState,
  piece: AnyBundle,
  answers: readonly EntryAnswer[] | undefined,
  whole: boolean,
): DeliveryState {
  if (answers === undefined) return state;
  const places = { ...state.places };
  const versions = { ...state.versions };
  ((piece.entry ?? []) as BundleEntry[]).forEach((entry, at) => {
    const { fullUrl, request } = entry;
    const { status, place, version } = answers[at] ?? {};
    if (status === undefined || !isStored(status)) return;
    const kept = place ?? placeById(entry);
    if (fullUrl !== undefined && kept !== undefined) places[fullUrl] = kept;
    if (request === undefined || !isGuarded(entry, whole)) return;
    if (version === undefined) delete versions[request.url];
    else versions[request.url] = version;
  });
  return { ...state, places, versions };
}

/** Where an update by id leaves a resource, whether the server says so or not. */
function placeById({ request }: BundleEntry): string | undefined {
  return isById(request) ? request?.url : undefined;
}
