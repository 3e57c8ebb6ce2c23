/**
 * Which SNOMED CT codes may leave the library. `free-set`: only ids in the Global Patient Set as
 * published in 2020-09 under CC BY 4.0. `licensed`: any id, by the statement of the caller that a
 * licence is held; the edition goes into `Coding.version`.
 * Not legal advice: see NOTICE and the usage terms of SNOMED International.
 */
export type SnomedPolicy = 'none' | 'free-set' | SnomedLicence;

export interface SnomedLicence {
  readonly licensed: {
    /** Who holds the licence. */
    readonly holder: string;
    /** Edition and release as a SNOMED CT version URI: `http://snomed.info/sct/900000000000207008/version/20240101`. */
    readonly edition: string;
  };
}
