import type { BundleEntry } from 'fhir/r4.js';
import { v5 } from 'uuid';
import type { AnyBundle } from '../export/to-bundle.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { failure, type Outcome, success } from '../issues/issue.ts';
import { type EntryAnswer, entryAnswers, outcomeCodes } from './answer.ts';
import { type CutOptions, piecesOf, placesAskedFor, withPlaces } from './cut.ts';
import { type Answer, connect, type Exchange, type FhirServer } from './server.ts';
import { pauseAsked } from './wait.ts';

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

/**
 * `stored`: it is all there. `refused`: sending it again would not help. `conflict`: something there
 * has another version than the one known; see `heldVersions`. `busy`: the bundle that was under way
 * is not stored, or not whole, and can be sent again. `unknown`: no answer that can be trusted came,
 * so that it may be stored, or be stored later.
 */
export type DeliveryResult = 'stored' | 'refused' | 'conflict' | 'busy' | 'unknown';

export interface Delivery {
  readonly result: DeliveryResult;
  /** To be given to the next delivery of this exam, whatever the result. */
  readonly state: DeliveryState;
  /** Every request and its answer, for a log. */
  readonly exchanges: readonly Exchange[];
  /** Status of the last answer, or of the entry that was not stored. */
  readonly status?: number;
  /** Codes of the OperationOutcome of the last answer. */
  readonly codes?: readonly string[];
  /** How long the server asks to wait. */
  readonly waitMilliseconds?: number;
}

/** Namespace of the digests of contents. */
const CONTENTS = 'b3b1c1f2-5a0e-4c7e-9a55-0d5e1c7f2a10';

/** Answers of the 400s that are not a verdict on the content. */
const passing: ReadonlySet<number> = new Set([401, 403, 404, 409, 423, 425, 429]);

/** A gateway that gave up waiting says nothing of what the server behind it does; 202 is done later. */
const undecided: ReadonlySet<number> = new Set([202, 408, 502, 504]);

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
  const before = options.state;
  let state: DeliveryState =
    before?.content === content
      ? before
      : { content, sent: 0, places: {}, versions: before?.versions ?? {} };
  const asked = placesAskedFor(bundle);
  const whole = pieces.length === 1 && cut.as === 'transaction';
  const ended = (judged: Judged): Outcome<Delivery> =>
    success({ ...judged, state, exchanges: connection.exchanges }, issues);

  while (state.sent < pieces.length) {
    const piece = pieces[state.sent];
    if (piece === undefined) break;
    const known = new Map([...asked, ...Object.entries(state.places)]);
    const text = toJson(withVersions(withPlaces(piece, known), state.versions, whole));
    const answer = await connection.send({ method: 'POST', path: '', body: text });
    const { answers, ...judged } = judge(answer, piece, server.now?.() ?? Date.now());
    state = noted(state, piece, answers, whole);
    if (judged.result !== 'stored') return ended(judged);
    state = { ...state, sent: state.sent + 1 };
    await options.onProgress?.(state);
  }
  return ended({ result: 'stored' });
}

type Judged = Omit<Delivery, 'state' | 'exchanges'>;

function judge(
  answer: Answer,
  piece: AnyBundle,
  now: number,
): Judged & { readonly answers?: readonly EntryAnswer[] } {
  if (answer.status === 'none') return { result: 'unknown' };
  const { status, text, header } = answer;
  if (undecided.has(status)) return { result: 'unknown', status };
  if (status >= 200 && status < 300) {
    const answers = entryAnswers(text, piece.type, piece.entry?.length ?? 0);
    return answers === undefined
      ? { result: 'unknown', status }
      : { ...judgeAll(answers), answers };
  }
  const wait = pauseAsked(header, now);
  return {
    result: resultOf(status),
    status,
    codes: outcomeCodes(text),
    ...(wait !== undefined && { waitMilliseconds: wait }),
  };
}

/** The worst that an entry says stands for all: one that conflicts, is refused, or is not done. */
function judgeAll(answers: readonly EntryAnswer[]): Judged {
  const failed = answers.flatMap(({ status = 0 }) => (isStored(status) ? [] : [status]));
  for (const result of ['conflict', 'refused', 'busy'] as const) {
    const status = failed.find((one) => resultOf(one) === result);
    if (status !== undefined) return { result, ...(status > 0 && { status }) };
  }
  return { result: 'stored' };
}

function isStored(status: number): boolean {
  return status >= 200 && status < 300 && status !== 202;
}

function resultOf(status: number): Exclude<DeliveryResult, 'stored' | 'unknown'> {
  if (status === 412) return 'conflict';
  return status >= 300 && status < 500 && !passing.has(status) ? 'refused' : 'busy';
}

/** Whether the version of an entry is kept and named: of a whole transaction the report guards all. */
export function isGuarded({ request, resource }: BundleEntry, whole: boolean): boolean {
  if (request?.method !== 'PUT' || request.url.includes('?')) return false;
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
    if (fullUrl !== undefined && place !== undefined) places[fullUrl] = place;
    if (request === undefined || !isGuarded(entry, whole)) return;
    if (version === undefined) delete versions[request.url];
    else versions[request.url] = version;
  });
  return { ...state, places, versions };
}
