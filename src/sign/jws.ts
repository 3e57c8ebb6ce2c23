import type { JWK } from 'jose';
import { FlattenedSign, flattenedVerify, importJWK } from 'jose';
import { base64 } from '../data/base64.ts';
import type { Verifier } from './verify.ts';

/** The form of a JSON Web Signature in FHIR. */
const JOSE = 'application/jose';

/**
 * Makes a detached JSON Web Signature, whose payload is left out.
 *
 * @param content What `contentToSign` wrote.
 * @param key Private key with its `alg`, and with `kid` where others are to find it.
 * @param when When it is made, as it is to stand in the record; it is signed too (`sigT`).
 * @returns Form and data for an `ExamSignature`.
 * @throws {TypeError} Where the key has no `alg`, or is none to sign with.
 * @example
 * const made = (content: string, key: import('jose').JWK) =>
 *   signDetached(content, key, '2025-05-06T08:31:00Z');
 * @see https://www.rfc-editor.org/rfc/rfc7515 appendix F, and https://hl7.org/fhir/R4/signatures.html
 */
export async function signDetached(
  content: string,
  key: JWK,
  when: string,
): Promise<{ readonly format: string; readonly data: string }> {
  const { alg, kid } = key;
  if (alg === undefined) throw new TypeError('cannot sign: the key does not state its algorithm');
  const { protected: header, signature } = await new FlattenedSign(
    new TextEncoder().encode(content),
  )
    .setProtectedHeader({ alg, sigT: when, ...(kid !== undefined && { kid }) })
    .sign(await importJWK(key, alg));
  return { format: JOSE, data: btoa(`${header}..${signature}`) };
}

/**
 * Makes the verifier of detached JSON Web Signatures for `verifySignatures`.
 *
 * @param keyFor Gives the public key for the `kid` of a signature; undefined for one that is not
 *   trusted. Whom to trust is the caller's to decide.
 * @returns The verifier. It takes the algorithm that the key states, and no other.
 * @example
 * const verifier = (key: import('jose').JWK) =>
 *   jwsVerifier((kid) => (kid === key.kid ? key : undefined));
 */
export function jwsVerifier(
  keyFor: (kid: string | undefined) => JWK | undefined | Promise<JWK | undefined>,
): Verifier {
  return async ({ format, data }, content) => {
    const parts = /^([\w-]+)\.\.([\w-]+)$/.exec(atob(data));
    const [, header, signature] = parts ?? [];
    if (format !== JOSE || header === undefined || signature === undefined) return false;
    const stated: unknown = JSON.parse(atob(header.replace(/-/g, '+').replace(/_/g, '/')));
    const { kid } = Object(stated) as { kid?: unknown }; // read as unknown alone
    const key = await keyFor(typeof kid === 'string' ? kid : undefined);
    if (key?.alg === undefined) return false;
    const jws = { protected: header, payload: base64Url(content), signature };
    await flattenedVerify(jws, await importJWK(key, key.alg), { algorithms: [key.alg] });
    return true;
  };
}

function base64Url(bytes: Uint8Array): string {
  return base64(bytes).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}
