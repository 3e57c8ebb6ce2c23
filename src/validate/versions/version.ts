import type { SchemaValidator } from '../../data/schema-errors.ts';
import type { FhirVersion } from '../../fhir/version.ts';
import type { CoreProfiles } from '../profiles/core.ts';
import type { Plan } from '../walk/plan.ts';

/** What the stages need to know of one FHIR version; each entry file makes one. */
export interface ValidatedVersion {
  readonly fhirVersion: FhirVersion;
  readonly resourceValidator: SchemaValidator;
  /** Names of all resources of the version, also of those whose schema is not held. */
  readonly resourceTypes: readonly string[];
  readonly plan: Plan;
  readonly knownTypes: ReadonlySet<string>;
  /** HL7's own profiles that apply without being claimed. */
  readonly core: CoreProfiles;
}
