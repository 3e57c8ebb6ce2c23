import { fromJson } from '../fhir/json/from-json.ts';

/** What one entry of a response says. */
export interface EntryAnswer {
  readonly status: number | undefined;
  /** `Patient/7`: where the server keeps it. */
  readonly place: string | undefined;
  /** Version as an ETag: `W/"3"`. */
  readonly version: string | undefined;
}

/**
 * The answers to the entries of a transaction or batch, in their order; undefined where the text is
 * no such response, for example a page, an OperationOutcome, or one of another length.
 * @see https://hl7.org/fhir/R4/http.html#transaction-response
 */
export function entryAnswers(
  text: string,
  type: string,
  count: number,
): readonly EntryAnswer[] | undefined {
  const { value } = fromJson(text);
  const entries = listIn(value, 'entry');
  if (valueIn(value, 'type') !== `${type}-response` || entries.length !== count) return undefined;
  return entries.map((entry) => entryAnswer(valueIn(entry, 'response')));
}

function entryAnswer(response: unknown): EntryAnswer {
  const status = /^\d{3}/.exec(String(valueIn(response, 'status')))?.[0];
  const location = String(valueIn(response, 'location') ?? '');
  const [, place, version] =
    /([A-Z][A-Za-z]+\/[A-Za-z0-9\-.]{1,64})(?:\/_history\/([A-Za-z0-9\-.]{1,64}))?$/.exec(
      location,
    ) ?? [];
  const etag = valueIn(response, 'etag');
  return {
    status: status === undefined ? undefined : Number(status),
    place,
    version: typeof etag === 'string' ? etag : weakTag(version),
  };
}

/** What a server holds of one resource now: its version, null where it names none. */
export function heldVersion(
  text: string,
  etag: string | null,
  resourceType: string,
): string | null | undefined {
  const { value } = fromJson(text);
  if (valueIn(value, 'resourceType') !== resourceType) return undefined;
  return etag ?? weakTag(valueIn(valueIn(value, 'meta'), 'versionId')) ?? null;
}

/** The codes of an OperationOutcome that are errors; they hold no patient data, unlike its texts. */
export function outcomeCodes(text: string): readonly string[] {
  const { value } = fromJson(text);
  return listIn(value, 'issue').flatMap((issue) => {
    const code = valueIn(issue, 'code');
    return typeof code === 'string' && /^[a-z-]{1,40}$/.test(code) ? [code] : [];
  });
}

function weakTag(version: unknown): string | undefined {
  return typeof version === 'string' ? `W/"${version}"` : undefined;
}

/** An own property of what another program sent. */
export function valueIn(holder: unknown, name: string): unknown {
  if (typeof holder !== 'object' || holder === null) return undefined;
  return Object.getOwnPropertyDescriptor(holder, name)?.value;
}

export function listIn(holder: unknown, name: string): readonly unknown[] {
  const value = valueIn(holder, name);
  return Array.isArray(value) ? value : [];
}
