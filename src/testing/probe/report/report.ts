import type { ServerChange } from '../../../deliver/stored/changes.ts';
import type { FhirVersion } from '../../../fhir/version.ts';
import type { ProbeNote } from '../misbehaviour.ts';

/** What a server did with one fault. */
export interface FaultVerdict {
  /** Id of the fault. */
  readonly fault: string;
  readonly title: string;
  readonly verdict: 'refused' | 'accepted' | 'failed';
  /** HTTP status; none where no answer came. */
  readonly status?: number;
}

/** What became of one step. */
export interface ProbeStep {
  readonly id: string;
  readonly title: string;
  readonly verdict: 'passed' | 'failed' | 'skipped';
  /** Why it was skipped. */
  readonly reason?: string;
  readonly notes: readonly ProbeNote[];
}

/** One thing that a server can do or cannot. */
export interface ProbeCapability {
  readonly id:
    | 'version'
    | 'formats'
    | 'ids'
    | 'size'
    | 'precision'
    | 'conditional-create'
    | 'overwriting'
    | 'validate'
    | 'search-by-site';
  readonly title: string;
  /** What was found: `at most 50 entries`. */
  readonly found: string;
  /** The options to set for this server: `most: 50`. */
  readonly set?: string;
}

/** What a probe found out about a server. It holds no patient data and no token. */
export interface ProbeReport {
  readonly url: string;
  readonly fhirVersion: FhirVersion;
  /** As the server names itself. */
  readonly software?: string;
  /** The exam was stored, read back equal, changed and withdrawn, whatever else is not as FHIR has it. */
  readonly works: boolean;
  /** No step failed, nothing was found that FHIR does not allow, and the exam was stored. */
  readonly passed: boolean;
  readonly steps: readonly ProbeStep[];
  /** What the server can do, and what to set in this library for it. */
  readonly capabilities: readonly ProbeCapability[];
  /** What the server changed in what it was sent; allowed or not. */
  readonly changes: readonly ServerChange[];
  readonly faults: readonly FaultVerdict[];
  /** Requests made in all, retries among them. */
  readonly requests: number;
  readonly retries: number;
}
