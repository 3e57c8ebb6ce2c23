import {
  isJson,
  type JsonResource,
  objectOf,
  objectsOf,
  textOf,
} from '../../../deliver/stored/json.ts';

/** What a CapabilityStatement declares, as far as a probe needs it. */
export interface Declared {
  readonly fhirVersion: string | undefined;
  readonly software: string | undefined;
  readonly softwareVersion: string | undefined;
  readonly formats: readonly string[];
  readonly interactions: readonly string[];
  /** Names of search parameters by type; none for a type that lists none. */
  readonly searches: ReadonlyMap<string, ReadonlySet<string>>;
  /** Types whose ids only the server gives. */
  readonly serverIds: ReadonlySet<string>;
}

/** @see https://hl7.org/fhir/R4/capabilitystatement.html */
export function declaredBy(statement: JsonResource): Declared {
  const software = objectOf(statement, 'software');
  const rest = objectsOf(statement, 'rest').find((one) => textOf(one, 'mode') === 'server') ?? {};
  const resources = objectsOf(rest, 'resource');
  const formats = statement['format'];
  return {
    fhirVersion: textOf(statement, 'fhirVersion'),
    software: shown(textOf(software, 'name')),
    softwareVersion: shown(textOf(software, 'version')),
    formats: Array.isArray(formats) ? formats.filter((one) => typeof one === 'string') : [],
    interactions: objectsOf(rest, 'interaction').flatMap((one) => textOf(one, 'code') ?? []),
    searches: new Map(
      resources.map((one) => [
        textOf(one, 'type') ?? '',
        new Set(objectsOf(one, 'searchParam').flatMap((param) => textOf(param, 'name') ?? [])),
      ]),
    ),
    serverIds: new Set(
      resources
        .filter((one) => isJson(one) && one['updateCreate'] === false)
        .flatMap((one) => textOf(one, 'type') ?? []),
    ),
  };
}

/** A name that a server gives itself, short and without control characters. */
function shown(text: string | undefined): string | undefined {
  return text?.replace(/[^\p{L}\p{N}\p{P}\p{Zs}+]/gu, '').slice(0, 80);
}
