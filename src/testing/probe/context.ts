import type { ServerChange } from '../../deliver/stored/changes.ts';
import type { ProbeSettings } from './options.ts';
import type { ProbeExams } from './probe-exams.ts';
import type { FaultVerdict } from './report/report.ts';
import type { Client } from './server/client.ts';
import type { Declared } from './server/declared.ts';
import type { Stored } from './server/store.ts';

/** What the steps of one probe share. */
export interface ProbeContext {
  readonly settings: ProbeSettings;
  readonly client: Client;
  readonly exams: ProbeExams;
  declared: Declared | undefined;
  /** The exam as it was stored last. */
  stored: Stored | undefined;
  /** Names of what may be on the server because of this probe: `Observation/1`. */
  readonly left: Set<string>;
  /** Something was sent and may have been stored under ids that nobody knows. */
  unknownIds: boolean;
  changes: readonly ServerChange[];
  readonly faults: FaultVerdict[];
  readonly measured: Measured;
}

/** What a server turned out to do; undefined where it was not found out. */
export interface Measured {
  /** Entries of the largest transaction that it took, and of the smallest that it refused. */
  taken?: number;
  refused?: number;
  conditionalCreate?: boolean;
  overwrites?: boolean;
  validates?: boolean;
}

/** One thing that a probe tries. It throws `Misbehaved` where it cannot go on. */
export interface Step {
  readonly id: string;
  readonly title: string;
  /** It makes no sense unless the exam was stored. */
  readonly needsExam?: true;
  /** Gives a reason where the step was left out. */
  readonly run: (context: ProbeContext) => Promise<{ readonly skipped: string } | undefined>;
}
