import type { IdentitySystems } from '../fhir/part-names.ts';
import type { SnomedPolicy } from '../fhir/snomed-policy.ts';
import type { FhirVersion } from '../fhir/version.ts';
import type { Catalogue } from '../terminology/catalogue.ts';

export type BundleType = 'collection' | 'transaction' | 'document';

export interface ExportOptions {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** Default `collection`. */
  readonly bundleType?: BundleType;
  /** Which SNOMED CT codes may leave. Default `free-set`: ids in the published Global Patient Set of 2020-09. */
  readonly snomed?: SnomedPolicy;
  /** In a transaction: `put` (update by our id, the default) or `conditional` (update by identifier). */
  readonly transaction?: 'put' | 'conditional';
  readonly identity?: IdentitySystems;
  /** Base of our code systems and profiles. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** Export an exam whose status is `draft`. Default false: a draft gives an error. */
  readonly allowDraft?: boolean;
  /** Generated narrative in each resource. Default true; a document always has it. */
  readonly narrative?: boolean;
}
