import type { BundleEntry } from 'fhir/r4.js';
import type { AnyBundle } from '../export/to-bundle.ts';
import { heldVersion } from './answer.ts';
import { type DeliverOptions, type DeliveryState, isGuarded } from './deliver.ts';
import { connect, type FhirServer } from './server.ts';

/**
 * Asks for the versions that a server holds now of what a bundle would write, for the `state` of
 * the next delivery after a conflict.
 *
 * @param bundle The transaction that is to be sent.
 * @param server Its base, and how requests are made.
 * @param options As for the delivery: cut, every resource is asked for, else the report alone.
 * @returns The versions, without those of resources that are not there or have none. Undefined
 *   where the server did not say.
 * @example
 * const versions = await heldVersions(bundle, { base: 'https://clinic.example/fhir' });
 */
export async function heldVersions(
  bundle: AnyBundle,
  server: FhirServer,
  { most = Number.MAX_SAFE_INTEGER, as }: DeliverOptions = {},
): Promise<DeliveryState['versions'] | undefined> {
  const entries = (bundle.entry ?? []) as BundleEntry[]; // one structure for all versions
  const whole = as !== 'batch' && entries.length <= most;
  const connection = connect(server);
  const versions: Record<string, string> = {};
  for (const { request, resource } of entries.filter((one) => isGuarded(one, whole))) {
    const path = request?.url ?? '';
    const answer = await connection.send({ method: 'GET', path });
    if (answer.status === 404 || answer.status === 410) continue;
    if (answer.status !== 200) return undefined;
    const { text, header } = answer;
    const version = heldVersion(text, header('etag'), resource?.resourceType ?? '');
    if (version === undefined) return undefined;
    if (version !== null) versions[path] = version;
  }
  return versions;
}
