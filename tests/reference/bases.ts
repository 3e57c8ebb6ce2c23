import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { type BundleType, toBundleOrThrow, toJson } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { faultsExams } from '../testing/faults-exam.ts';
import type { FhirRelease } from './corpus.ts';
import { releases } from './definitions.ts';

/** A sound bundle in which faults are planted. */
export interface Base {
  /** Exam and kind of bundle: `skin/document`. */
  readonly name: string;
  readonly version: FhirRelease;
  readonly text: string;
}

/** The four kinds of bundle: a transaction stores by our ids, or by identifiers. */
export const bundleKinds = {
  collection: { bundleType: 'collection' },
  transaction: { ...clinic, bundleType: 'transaction' },
  conditional: { ...clinic, bundleType: 'transaction', transaction: 'conditional' },
  document: { bundleType: 'document' },
} as const satisfies Record<
  string,
  { identity?: string; bundleType: BundleType; transaction?: 'conditional' }
>;

export const basesFile: URL = new URL('verdicts/bases.ndjson.gz', import.meta.url);

/**
 * The bases as they were when the verdicts were made. They are kept, so that a change of the export
 * does not make all the verdicts void.
 */
export function keptBases(): Base[] {
  return gunzipSync(readFileSync(basesFile))
    .toString('utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Base); // written by verdicts.ts, from the bases below
}

/** The same exams as they are exported now. */
export function currentBases(): Base[] {
  return releases.flatMap((version) =>
    faultsExams.flatMap(({ name, exam }) =>
      Object.entries(bundleKinds).map(([kind, options]) => ({
        name: `${name}/${kind}`,
        version,
        text: toJson(toBundleOrThrow(exam, { fhirVersion: version, ...options })),
      })),
    ),
  );
}
