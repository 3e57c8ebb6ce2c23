import type { FhirVersion } from '../../src/fhir/version.ts';
import { createDefinitions, type Definitions } from '../../src/validate/elements/definitions.ts';
import * as r4 from '../../src/validate/tables/r4.ts';
import * as r4Rest from '../../src/validate/tables/r4-rest.ts';
import * as r4b from '../../src/validate/tables/r4b.ts';
import * as r4bRest from '../../src/validate/tables/r4b-rest.ts';
import * as r5 from '../../src/validate/tables/r5.ts';
import * as r5Rest from '../../src/validate/tables/r5-rest.ts';

const tables = { R4: [r4, r4Rest], R4B: [r4b, r4bRest], R5: [r5, r5Rest] } as const;

/** What the entries of all types know of the structure of a version. */
export function allDefinitions(version: FhirVersion): Definitions {
  const [small, rest] = tables[version];
  return createDefinitions(version, {
    primitives: small.primitives,
    types: { ...small.types, ...rest.types },
    extensions: {},
    codeSystems: { ...small.codeSystems, ...rest.codeSystems },
    terminology: {},
    valueSets: { ...small.valueSets, ...rest.valueSets },
  });
}

export function resourceTypes(version: FhirVersion): readonly string[] {
  return tables[version][0].resourceTypes;
}
