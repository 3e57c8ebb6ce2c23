import type { RuleSetId } from '../checks/rule-sets.ts';
import type { CheckSettings } from '../checks/settings/check-settings.ts';
import type { Detail } from '../export/detail.ts';
import type { MasterData, MasterDataMode } from '../export/resources/master-data.ts';
import type { Target } from '../export/target/guides.ts';
import type { SnomedLicence } from '../fhir/licence/snomed-policy.ts';
import type { IdentitySystems } from '../fhir/names/part-names.ts';
import type { FhirVersion } from '../fhir/version.ts';
import type { Text } from '../model/primitive.ts';
import type { CatalogueAdditions } from '../terminology/catalogue.ts';
import type { LexiconTable } from '../terminology/lexicon.ts';
import type { Relation } from '../terminology/types.ts';

/**
 * What a clinic decides, in one file; `parseClinic` reads it. Where `undecided` can stand, it says
 * that nobody has decided yet: the default of the library holds, and what cannot do without it is refused.
 */
export interface ClinicFile {
  readonly format: 'face-neck-clinic/1';
  /** Where an editor finds the JSON Schema. */
  readonly $schema?: string;
  /** Whose file it is, for people. */
  readonly name?: Text;
  /** Language of displays, forms, pages and letters. Default `en`. */
  readonly language?: 'en' | 'de' | 'undecided';
  /**
   * A URI of the clinic below which the ids of its exams stand, or each of the three systems; or
   * `undecided`. Whatever is stored needs it.
   */
  readonly identity?: string | IdentitySystems;
  /** Base of our code systems and profiles. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /** Which SNOMED CT codes may leave. Default `free-set`. */
  readonly snomed?: SnomedChoice | SnomedLicence;
  /** Own rows by table: regions, signs, protocols and all others. `system` can be `undecided` while there are none. */
  readonly catalogue?: CatalogueAdditions;
  /** What people call rows, own ones and ours, besides the words that the search knows. */
  readonly words?: ClinicWords;
  /** Codings of the clinic beside ours or in their place. */
  readonly codeMap?: readonly CodeMapRow[];
  /** How exams leave. */
  readonly export?: ClinicExport;
  /** What the checks are held to. */
  readonly checks?: ClinicChecks;
}

export type SnomedChoice = 'none' | 'free-set' | 'undecided';

/** By table and code, words of any language. */
export type ClinicWords = {
  readonly [Table in LexiconTable]?: { readonly [code: string]: readonly Text[] };
};

/** One line of a code map; what each part holds is that of `CodeMapEntry`. */
export interface CodeMapRow {
  /** A table (`test-points`), our code system made from it, or a system that another line leads to. */
  readonly source: string;
  /** A code as it is exported: a row, `row.value`, or `region.side`. */
  readonly code: string;
  /** System of the target. */
  readonly system: string;
  /** None: with `replace`, the row has no coding in that system any more. */
  readonly target?: string;
  /** Version of the target's system. */
  readonly version?: string;
  /** Name of the target, as its system has it. */
  readonly display?: string;
  /** How the target relates to the source; `wider`: the target means more. */
  readonly relation?: Relation;
  /** `replace` puts the target in place of what the row has in that system. Default `add`. */
  readonly action?: 'add' | 'replace';
  /** For a measure: the unit that the target stands for. */
  readonly unit?: string;
}

/** How exams leave; each part as the option of `toBundle` of the same name. */
export interface ClinicExport {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** Default `collection`. */
  readonly bundleType?: 'collection' | 'transaction' | 'document' | 'undecided';
  /** Default `everything`. */
  readonly detail?: Detail;
  readonly target?: Target;
  /** Default `put`. */
  readonly transaction?: 'put' | 'conditional';
  /** Default `match`. */
  readonly masterData?: MasterDataMode | MasterData;
  /** Default `extension`. */
  readonly laterality?: 'extension' | 'body-structure' | 'text';
  /** Name our profiles in `meta.profile`. Default false. */
  readonly profiles?: boolean;
  readonly filing?: ClinicFiling;
}

/** What a receiver files a record by. */
export interface ClinicFiling {
  readonly reportCategory?: ClinicCoding;
  readonly encounterStatus?: 'in-progress' | 'finished' | 'unknown';
  readonly security?: readonly ClinicCoding[];
  readonly tags?: readonly ClinicCoding[];
  readonly documentType?: ClinicCoding;
  readonly documentCategory?: ClinicCoding;
}

/** A coding of FHIR. */
export interface ClinicCoding {
  readonly system: string;
  readonly version?: string;
  readonly code: string;
  readonly display?: string;
}

/** Settings of the checks that hold for every exam: all but judgements and dismissals, which are of one. */
export interface ClinicChecks
  extends Omit<CheckSettings, 'judgements' | 'dismissals' | 'ruleSets'> {
  /** Rule sets that prompts may come from. Default: none, so no prompts. */
  readonly ruleSets?: readonly RuleSetId[] | 'undecided';
}
