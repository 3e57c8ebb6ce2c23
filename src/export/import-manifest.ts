import { failure, type Issue, issue, type Outcome, success } from '../issues/issue.ts';

/** The body of a request `POST [base]/$import`. */
export interface ImportManifest {
  readonly inputFormat: 'application/fhir+ndjson';
  /** What the receiver keeps this data apart by: the `identity` of the export. */
  readonly inputSource: string;
  readonly storageDetail: { readonly type: 'https' };
  readonly input: readonly { readonly type: string; readonly url: string }[];
}

export interface ImportManifestOptions {
  /** Where the files will stand: an address by HTTPS, below which each is `Observation.ndjson` and the like. */
  readonly url: string;
  /** The URI that was given as `identity`. */
  readonly source: string;
}

/**
 * Makes the manifest with which a server is asked to import files of NDJSON. It reads and sends nothing.
 * Bulk import is a proposal and no standard: some servers take this form, others FHIR Parameters.
 *
 * @param types Types of the resources, a file each: the keys of the lines of `toNdjson`.
 * @param options Where the files will stand, and whose they are.
 * @returns The manifest, an input for each type in the order given. It fails where an address is none.
 * @example
 * const identity = 'https://clinic.example/records';
 * const { lines } = toNdjson(exam, { identity });
 * const url = 'https://files.clinic.example/2025';
 * const outcome = importManifest(lines.keys(), { url, source: identity });
 * if (outcome.ok) console.log(JSON.stringify(outcome.value));
 * @see https://github.com/smart-on-fhir/bulk-import/blob/master/import-manifest.md
 */
export function importManifest(
  types: Iterable<string>,
  options: ImportManifestOptions,
): Outcome<ImportManifest> {
  const { url, source } = options ?? {};
  const issues = [...misfit('url', url, /^https:$/), ...misfit('source', source, /^[a-z]/)];
  if (issues.length > 0) return failure(issues);
  const folder = url.replace(/\/$/, '');
  return success({
    inputFormat: 'application/fhir+ndjson',
    inputSource: source,
    storageDetail: { type: 'https' },
    input: [...types].map((type) => ({ type, url: `${folder}/${type}.ndjson` })),
  });
}

function misfit(name: string, value: unknown, protocol: RegExp): readonly Issue[] {
  const parsed = typeof value === 'string' && URL.canParse(value) ? new URL(value) : undefined;
  const sound = parsed !== undefined && protocol.test(parsed.protocol) && parsed.search === '';
  return sound ? [] : [issue('invalid-value', [name], { reason: 'absolute-uri' })];
}
