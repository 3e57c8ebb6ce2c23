import type { Definitions } from '../elements/definitions.ts';
import type { ValueSetTable } from '../elements/table-types.ts';
import { loincCodes, snomedCodes } from '../tables/vital-sign-codes.ts';
import { isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import { compileAll, type Profile } from './compile.ts';
import { structureBase } from './structure.ts';

/** The generated table of a version. */
export interface VitalSigns {
  readonly profiles: readonly object[];
  readonly valueSets: ValueSetTable;
}

/** Profiles of FHIR itself. They are put together when the first of them is asked for. */
export interface CoreProfiles {
  readonly byUrl: (url: string) => Profile | undefined;
  /** Those that a resource must fit by what it says, claimed or not. */
  readonly appliedTo: (resource: JsonObject) => readonly Profile[];
}

/** @see https://hl7.org/fhir/R4/observation-vitalsigns.html: an Observation of a vital sign must fit its profile */
export function coreProfiles({ profiles }: VitalSigns, definitions: Definitions): CoreProfiles {
  let compiled: ReadonlyMap<string, Profile> | undefined;
  const byUrl = (url: string): Profile | undefined => {
    if (!url.startsWith(structureBase)) return undefined;
    compiled ??= compileAll(profiles, definitions).byUrl;
    return compiled.get(url);
  };
  return {
    byUrl,
    appliedTo(resource) {
      if (resource['resourceType'] !== 'Observation' || !isObject(resource['code'])) return none;
      const names = new Set(objectsOf(resource['code']['coding']).flatMap(profilesOfCoding));
      return [...names].flatMap((name) => byUrl(structureBase + name) ?? []);
    },
  };
}

const none: readonly never[] = [];

const profilesByCode: ReadonlyMap<string, readonly string[]> = byCode();

function byCode(): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const [system, table] of [
    ['http://loinc.org', loincCodes],
    ['http://snomed.info/sct', snomedCodes],
  ] as const) {
    for (const [profile, codes] of Object.entries(table)) {
      for (const code of codes) {
        const key = `${system} ${code}`;
        found.set(key, [...(found.get(key) ?? []), profile]);
      }
    }
  }
  return found;
}

function profilesOfCoding(coding: JsonObject): readonly string[] {
  const key = `${textOf(coding['system'])} ${textOf(coding['code'])}`;
  return profilesByCode.get(key) ?? none;
}
