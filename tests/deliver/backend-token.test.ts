import { decodeProtectedHeader, exportJWK, generateKeyPair, jwtVerify } from 'jose';
import { describe, expect, it } from 'vitest';
import { backendToken } from '../../src/deliver/backend-token.ts';

const tokenUrl = 'https://clinic.example/token';
const start = Date.parse('2031-11-05T10:00:00Z');

interface Asked {
  readonly url: string;
  readonly body: URLSearchParams;
}

/** A client with a key of its own, and an authorization server that notes what it is asked. */
async function client(alg: 'ES384' | 'RS384', answer: () => Response) {
  const { privateKey, publicKey } = await generateKeyPair(alg, { extractable: true });
  const asked: Asked[] = [];
  const clock = { now: start };
  const token = backendToken({
    tokenUrl,
    clientId: 'harbour-exams',
    key: { ...(await exportJWK(privateKey)), alg, kid: 'k1' },
    now: () => clock.now,
    fetch: (url, init) => {
      asked.push({ url: String(url), body: new URLSearchParams(String(init?.body)) });
      return Promise.resolve(answer());
    },
  });
  return { token, asked, clock, publicKey };
}

const granted = (): Response =>
  Response.json({ access_token: 'abc.DEF-1', token_type: 'bearer', expires_in: 300 });

// https://hl7.org/fhir/smart-app-launch/backend-services.html#obtain-access-token
describe('a token for backend services', () => {
  it.each(['ES384', 'RS384'] as const)('is asked for by a signed assertion, %s', async (alg) => {
    const { token, asked, publicKey } = await client(alg, granted);
    expect(await token(false)).toBe('abc.DEF-1');
    const [{ url, body } = { url: '', body: new URLSearchParams() }] = asked;
    expect(url).toBe(tokenUrl);
    expect(Object.fromEntries(body)).toMatchObject({
      grant_type: 'client_credentials',
      scope: 'system/*.cruds',
      client_assertion_type: 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer',
    });
    const assertion = body.get('client_assertion') ?? '';
    expect(decodeProtectedHeader(assertion)).toEqual({ alg, kid: 'k1', typ: 'JWT' });
    const { payload } = await jwtVerify(assertion, publicKey, { currentDate: new Date(start) });
    expect(payload).toMatchObject({ iss: 'harbour-exams', sub: 'harbour-exams', aud: tokenUrl });
    expect((payload.exp ?? 0) - start / 1000).toBe(300);
    expect(payload.jti).toMatch(/^[0-9a-f-]{36}$/);
  });

  it('is kept until it ends or is refused, each time with another assertion', async () => {
    const { token, asked, clock } = await client('ES384', granted);
    await token(false);
    await token(false);
    expect(asked).toHaveLength(1);
    await token(true);
    expect(asked).toHaveLength(2);
    clock.now = start + 271_000;
    await token(false);
    expect(new Set(asked.map(({ body }) => body.get('client_assertion'))).size).toBe(3);
  });

  it.each([
    ['an error', () => Response.json({ error: 'invalid_client' }, { status: 401 })],
    ['a page', () => new Response('<html></html>')],
    ['no token', () => Response.json({ expires_in: 300 })],
    ['a token that would be two headers', () => Response.json({ access_token: 'a\r\nb: c' })],
  ])('is not made of %s', async (_, answer) => {
    const { token } = await client('ES384', answer);
    await expect(token(false)).rejects.toThrow(/^cannot get a token: the server answered/);
  });
});
