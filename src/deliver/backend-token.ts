import type { JWK } from 'jose';
import { importJWK, SignJWT } from 'jose';
import { v4 } from 'uuid';
import { fromJson } from '../fhir/json/from-json.ts';
import { valueIn } from './answer.ts';

/** A client that is registered with the authorization server of a FHIR server. */
export interface BackendClient {
  /** Address at which tokens are given. */
  readonly tokenUrl: string;
  readonly clientId: string;
  /** Private key with its `kid` and `alg`: RS384 or ES384. */
  readonly key: JWK;
  /** Default `system/*.cruds`: every type, every interaction. */
  readonly scope?: string;
  /** Default: the global one. */
  readonly fetch?: typeof fetch;
  /** Milliseconds since 1970. Default: the clock. */
  readonly now?: () => number;
}

/** A token that ends so soon is asked for anew, in milliseconds. */
const MARGIN = 30_000;

/**
 * Makes the `token` of a server for SMART Backend Services: a signed assertion of the client is
 * exchanged for a token, which is used until it ends or the server refuses it.
 *
 * @param client Address for tokens, id and private key of the client.
 * @returns The function to give to the server. It throws a TypeError where no token is given; the
 *   message does not hold what was sent.
 * @example
 * const withToken = (client: Parameters<typeof backendToken>[0]) => backendToken(client);
 * @see https://hl7.org/fhir/smart-app-launch/backend-services.html
 */
export function backendToken(client: BackendClient): (renew: boolean) => Promise<string> {
  const now = client.now ?? Date.now;
  let current: { readonly token: string; readonly until: number } | undefined;
  return async (renew) => {
    if (current === undefined || renew || current.until - MARGIN < now()) {
      current = await tokenFrom(client, now());
    }
    return current.token;
  };
}

async function tokenFrom(
  client: BackendClient,
  now: number,
): Promise<{ readonly token: string; readonly until: number }> {
  const { tokenUrl, scope = 'system/*.cruds' } = client;
  const body = new URLSearchParams({
    grant_type: 'client_credentials',
    scope,
    client_assertion_type: 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer',
    client_assertion: await assertion(client, now),
  });
  const answer = await (client.fetch ?? fetch)(tokenUrl, {
    method: 'POST',
    headers: { accept: 'application/json', 'content-type': 'application/x-www-form-urlencoded' },
    body: body.toString(),
    redirect: 'error',
    signal: AbortSignal.timeout(30_000),
  });
  const { value } = fromJson(await answer.text());
  const token = valueIn(value, 'access_token');
  // RFC 6750 section 2.1
  if (!answer.ok || typeof token !== 'string' || !/^[A-Za-z0-9\-._~+/]+=*$/.test(token)) {
    throw new TypeError(`cannot get a token: the server answered with status ${answer.status}`);
  }
  const seconds = valueIn(value, 'expires_in');
  return { token, until: now + (typeof seconds === 'number' ? seconds : 300) * 1000 };
}

/** @see https://hl7.org/fhir/smart-app-launch/client-confidential-asymmetric.html */
async function assertion({ key, clientId, tokenUrl }: BackendClient, now: number): Promise<string> {
  const { alg = 'ES384', kid } = key;
  const seconds = Math.floor(now / 1000);
  return new SignJWT({})
    .setProtectedHeader({ alg, typ: 'JWT', ...(kid !== undefined && { kid }) })
    .setIssuer(clientId)
    .setSubject(clientId)
    .setAudience(tokenUrl)
    .setJti(v4())
    .setIssuedAt(seconds)
    .setExpirationTime(seconds + 300)
    .sign(await importJWK(key, alg));
}
