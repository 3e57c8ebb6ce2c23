import type { BundleEntry } from 'fhir/r4.js';
import type { AnyBundle } from '../../export/to-bundle.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { isById } from '../answer.ts';
import type { DeliveryState } from '../deliver.ts';
import { type Connection, connect, type Exchange, type FhirServer } from '../server.ts';
import { changesIn, type Pair, type ServerChange } from './changes.ts';
import { objectsOf, resourceOf } from './json.ts';
import { placeFrom } from './place.ts';

/** What a server holds of a delivery. It holds no patient data. */
export interface ReadBack {
  /** All of it is there, once, and as it was sent. False also where the server did not say. */
  readonly same: boolean;
  /** What differs, by kind and element; what a server may change is among it, as `allowed`. */
  readonly changes: readonly ServerChange[];
  /** Places at which nothing is, or something else: `Observation/1`. */
  readonly missing: readonly string[];
  /** Types of resources of which the server has several with one identifier. */
  readonly doubled: readonly string[];
  /** Types of which the server did not say what it holds. */
  readonly unread: readonly string[];
  /** Every request and its answer, for a log. */
  readonly exchanges: readonly Exchange[];
}

/**
 * Reads what a server has stored and compares it with what was sent: a server can say that it stored
 * and have dropped extensions, rounded figures, or made a second patient. People, places and devices
 * that were matched are counted and not compared, since the server may know more of them.
 *
 * @param bundle The transaction that was delivered.
 * @param server Its base, and how requests are made.
 * @param state From the delivery.
 * @returns What is there. Nothing throws for what a server does.
 * @example
 * const { value } = await deliver(bundle, { base: 'https://clinic.example/fhir' });
 * if (value) console.log(await readBack(bundle, { base: 'https://clinic.example/fhir' }, value.state));
 */
export async function readBack(
  bundle: AnyBundle,
  server: FhirServer,
  { places }: Pick<DeliveryState, 'places'>,
): Promise<ReadBack> {
  const connection = connect(server);
  const entries = (bundle.entry ?? []) as BundleEntry[]; // one structure for all versions
  const pairs: Pair[] = [];
  const missing: string[] = [];
  const doubled = new Set<string>();
  const unread = new Set<string>();
  const look = async (entry: BundleEntry): Promise<void> => {
    const type = entry.resource?.resourceType ?? '';
    const count = await counted(connection, type, entry.request);
    if (count === 'unread') unread.add(type);
    else if (count === 0) missing.push(type);
    else if (count > 1) doubled.add(type);
    const path = placeOfOurs(entry, places);
    if (path === undefined) return;
    const received = await read(connection, path);
    // Read as it was sent, so that figures keep their digits.
    const sent = resourceOf(fromJson(toJson(entry.resource)).value);
    if (received === 'unread' || sent === undefined) unread.add(type);
    else if (received?.resourceType !== type) missing.push(path);
    else pairs.push({ sent, received });
  };
  for (const entry of entries) await look(entry);
  const changes = changesIn(pairs, (fullUrl) => placeFrom(places[fullUrl] ?? ''));
  const whole = missing.length + doubled.size + unread.size === 0;
  return {
    same: whole && changes.every(({ allowed }) => allowed),
    changes,
    missing,
    doubled: [...doubled],
    unread: [...unread],
    exchanges: connection.exchanges,
  };
}

/** Where a resource is that nobody else writes. */
function placeOfOurs(
  { fullUrl = '', request }: BundleEntry,
  places: DeliveryState['places'],
): string | undefined {
  if (request?.ifNoneExist !== undefined) return undefined;
  return places[fullUrl] ?? (isById(request) ? request?.url : undefined);
}

/** How many resources the condition of an entry finds; one for an entry that has none. */
async function counted(
  connection: Connection,
  type: string,
  request: BundleEntry['request'],
): Promise<number | 'unread'> {
  const condition = request?.ifNoneExist ?? request?.url.split('?')[1];
  if (condition === undefined) return 1;
  const answer = await connection.send({ method: 'GET', path: `${type}?${condition}` });
  if (answer.status !== 200) return 'unread';
  const found = resourceOf(fromJson(answer.text).value);
  if (found?.resourceType !== 'Bundle' || found['type'] !== 'searchset') return 'unread';
  return objectsOf(found, 'entry').filter(
    ({ resource }) => resourceOf(resource)?.resourceType === type,
  ).length;
}

/** What is at a place; undefined where the server says that nothing is. */
async function read(
  connection: Connection,
  path: string,
): Promise<ReturnType<typeof resourceOf> | 'unread'> {
  const answer = await connection.send({ method: 'GET', path });
  if (answer.status === 404 || answer.status === 410) return undefined;
  if (answer.status !== 200) return 'unread';
  return resourceOf(fromJson(answer.text).value) ?? 'unread';
}
