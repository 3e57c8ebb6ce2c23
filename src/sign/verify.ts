import { isPlainObject } from '../data/plain-data.ts';
import { SIGNED_FORM } from '../fhir/signature.ts';
import { failure, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import { contentToSign } from './signed-content.ts';

/** A signature as it stands in a record. */
export interface HeldSignature {
  /** `application/jose` for a JSON Web Signature. */
  readonly format: string;
  /** Its bytes, as base64. */
  readonly data: string;
  /** Place of its Provenance among the entries. */
  readonly at: number;
}

/** Tells whether a signature is one of these bytes. */
export type Verifier = (
  signature: Pick<HeldSignature, 'format' | 'data'>,
  content: Uint8Array,
) => boolean | Promise<boolean>;

/**
 * Verifies the signature of the last step of a record against what the record says now. What was
 * signed before the last step is not there to be looked at, and is told as not checked.
 *
 * @param bundle The record.
 * @param verify Looks at one signature; `jwsVerifier` of the entry `sign/jws` makes one.
 * @returns How many signatures are good. It fails where a signature is not one of this content, and
 *   where the record has none.
 * @example
 * const { ok, issues } = await verifySignatures(bundle, async () => false);
 */
export async function verifySignatures(
  bundle: unknown,
  verify: Verifier,
): Promise<Outcome<number>> {
  const content = contentToSign(bundle);
  if (!content.ok) return content;
  const bytes = new TextEncoder().encode(content.value);
  const steps = stepsOf(bundle);
  const last = steps.reduce((most, { version }) => Math.max(most, version), 0);
  const issues: Issue[] = [];
  let good = 0;
  for (const { version, signatures, at } of steps) {
    const path = ['entry', at, 'resource', 'signature'];
    for (const signature of signatures) {
      if (version < last) {
        const severity = 'information';
        issues.push(issue('invalid-signature', path, { reason: 'earlier' }, { severity }));
      } else if (signature === undefined) {
        issues.push(issue('invalid-signature', path, { reason: 'form' }));
      } else if (await holds(verify, signature, bytes)) good += 1;
      else issues.push(issue('invalid-signature', path, { reason: 'content' }));
    }
  }
  if (good === 0 && issues.every(({ severity }) => severity !== 'error')) {
    issues.push(issue('missing-property', ['entry'], { reason: 'signature' }));
  }
  return issues.some(({ severity }) => severity === 'error')
    ? failure(issues)
    : success(good, issues);
}

/** What cannot be verified is not verified. */
async function holds(
  verify: Verifier,
  signature: HeldSignature,
  content: Uint8Array,
): Promise<boolean> {
  try {
    return (await verify(signature, content)) === true;
  } catch {
    return false;
  }
}

interface SignedStep {
  readonly at: number;
  readonly version: number;
  readonly signatures: readonly (HeldSignature | undefined)[];
}

function stepsOf(bundle: unknown): SignedStep[] {
  const entries = isPlainObject(bundle) && Array.isArray(bundle['entry']) ? bundle['entry'] : [];
  return entries.flatMap((entry: unknown, at) => {
    const resource = isPlainObject(entry) ? entry['resource'] : undefined;
    if (!isPlainObject(resource) || resource['resourceType'] !== 'Provenance') return [];
    const list = Array.isArray(resource['signature']) ? resource['signature'] : [];
    const signatures = list.map((one: unknown) => heldSignature(one, at));
    return [{ at, version: versionOf(resource['entity']), signatures }];
  });
}

function heldSignature(value: unknown, at: number): HeldSignature | undefined {
  if (!isPlainObject(value)) return undefined;
  const { targetFormat, sigFormat: format, data } = value;
  const known = targetFormat === SIGNED_FORM && typeof format === 'string';
  return known && typeof data === 'string' ? { format, data, at } : undefined;
}

/** A step names the version that it replaced; the first replaced none. */
function versionOf(entities: unknown): number {
  const list: unknown[] = Array.isArray(entities) ? entities : [];
  for (const entity of list) {
    if (!isPlainObject(entity) || entity['role'] !== 'revision') continue;
    const { what } = entity;
    const identifier = isPlainObject(what) ? what['identifier'] : undefined;
    const value = isPlainObject(identifier) ? identifier['value'] : undefined;
    const before = typeof value === 'string' ? Number(/\|version\|(\d{1,6})$/.exec(value)?.[1]) : 0;
    return Number.isInteger(before) ? before + 1 : 1;
  }
  return 1;
}
