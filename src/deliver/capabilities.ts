import type { ExportOptions } from '../export/options.ts';
import { fromJson } from '../fhir/json/from-json.ts';
import { type FhirVersion, fhirVersionNumber, fhirVersions } from '../fhir/version.ts';
import { listIn, valueIn } from './answer.ts';
import type { CutOptions } from './cut.ts';
import { connect, type FhirServer } from './server.ts';

/** What a server declares of itself; undefined where it does not say. */
export interface Capabilities {
  readonly fhirVersion: FhirVersion | undefined;
  readonly json: boolean;
  readonly transaction: boolean;
  readonly batch: boolean;
  /** It stores resources under ids that the client chooses. */
  readonly clientIds: boolean | undefined;
  /** It matches what may be there before it makes it. */
  readonly conditionalCreate: boolean | undefined;
  readonly conditionalUpdate: boolean | undefined;
  /** It keeps versions, by which a late request is known as late. */
  readonly versions: boolean | undefined;
}

/**
 * Reads the CapabilityStatement of a server.
 *
 * @param server Its base, and how requests are made.
 * @returns What of it matters to a delivery; undefined where none comes.
 * @example
 * const capabilities = await readCapabilities({ base: 'https://clinic.example/fhir' });
 * @see https://hl7.org/fhir/R4/capabilitystatement.html
 */
export async function readCapabilities(server: FhirServer): Promise<Capabilities | undefined> {
  const answer = await connect(server).send({ method: 'GET', path: 'metadata' });
  if (answer.status !== 200) return undefined;
  const { value } = fromJson(answer.text);
  return valueIn(value, 'resourceType') === 'CapabilityStatement' ? declaredIn(value) : undefined;
}

function declaredIn(statement: unknown): Capabilities {
  const rests = listIn(statement, 'rest');
  const rest = rests.find((one) => valueIn(one, 'mode') === 'server');
  const interactions = listIn(rest, 'interaction').map((one) => valueIn(one, 'code'));
  const resource = (type: string): unknown =>
    listIn(rest, 'resource').find((one) => valueIn(one, 'type') === type);
  const flag = (type: string, name: string): boolean | undefined => {
    const value = valueIn(resource(type), name);
    return typeof value === 'boolean' ? value : undefined;
  };
  const number = String(valueIn(statement, 'fhirVersion') ?? '');
  const versioning = valueIn(resource('DiagnosticReport'), 'versioning');
  return {
    fhirVersion: fhirVersions.find((version) =>
      number.startsWith(fhirVersionNumber[version].replace(/\.\d+$/, '.')),
    ),
    json: listIn(statement, 'format').some((one) => /(^|[/+])json(;|$)/.test(String(one))),
    transaction: interactions.includes('transaction'),
    batch: interactions.includes('batch'),
    clientIds: flag('Observation', 'updateCreate'),
    conditionalCreate: flag('Patient', 'conditionalCreate'),
    conditionalUpdate: flag('Observation', 'conditionalUpdate'),
    versions: versioning === undefined ? undefined : versioning !== 'no-version',
  };
}

/** What to set in this library for a server that declares this. */
export interface ServerSettings {
  readonly export: Pick<ExportOptions, 'fhirVersion' | 'transaction'>;
  readonly deliver: Pick<CutOptions, 'as'>;
}

/**
 * Chooses the settings of export and delivery that a server can take.
 *
 * @param capabilities From `readCapabilities`.
 * @returns The settings.
 * @example
 * const capabilities = await readCapabilities({ base: 'https://clinic.example/fhir' });
 * if (capabilities) console.log(settingsFor(capabilities));
 */
export function settingsFor({
  fhirVersion,
  clientIds,
  transaction,
  batch,
}: Capabilities): ServerSettings {
  return {
    export: {
      ...(fhirVersion !== undefined && { fhirVersion }),
      transaction: clientIds === false ? 'conditional' : 'put',
    },
    deliver: { as: batch && !transaction ? 'batch' : 'transaction' },
  };
}
