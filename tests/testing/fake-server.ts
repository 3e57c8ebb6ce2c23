import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fromJson, toJson } from '../../src/index.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';

type Data = Record<string, unknown>;

export interface FakeRequest {
  readonly method: string;
  /** Below the base, with the query: `Patient/1`. */
  readonly path: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

export interface FakeAnswer {
  status: number;
  headers: Record<string, string>;
  body: string;
}

/** Bends an answer of the well-behaved server; `true` means that it has answered by itself. */
export type Twist = (request: FakeRequest, answer: FakeAnswer, raw: ServerResponse) => unknown;

export interface FakeServer {
  readonly url: string;
  readonly requests: FakeRequest[];
  /** What is stored, by name. */
  readonly stored: Map<string, Kept>;
  stop(): Promise<void>;
}

interface Kept {
  resource: Data;
  version: number;
  deleted: boolean;
}

export interface FakeOptions {
  /** Accepts what has faults. */
  readonly lax?: boolean;
  /** Gives the ids itself, and says so. */
  readonly serverIds?: boolean;
  readonly software?: string;
}

/** A small FHIR server on the loopback address that does what a probe asks, and does it right. */
export async function startFake(
  twist: Twist = () => {},
  options: FakeOptions = {},
): Promise<FakeServer> {
  const stored = new Map<string, Kept>();
  const requests: FakeRequest[] = [];
  const server = createServer(async (incoming, raw) => {
    const pieces: Buffer[] = [];
    for await (const piece of incoming) pieces.push(piece);
    const path = (incoming.url ?? '').replace(/^\/fhir\/?/, '');
    const method = incoming.method ?? '';
    const body = Buffer.concat(pieces).toString('utf8');
    const request = { method, path, headers: incoming.headers, body };
    requests.push(request);
    const answer = answerTo(stored, request, options);
    if (twist(request, answer, raw) === true) return;
    raw.writeHead(answer.status, answer.headers).end(answer.body);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo; // it listens on a port, not on a pipe
  return {
    url: `http://127.0.0.1:${port}/fhir`,
    requests,
    stored,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function answerTo(
  stored: Map<string, Kept>,
  request: FakeRequest,
  options: FakeOptions,
): FakeAnswer {
  const { method, path, body } = request;
  const url = new URL(path, 'http://127.0.0.1/');
  const name = url.pathname.slice(1);
  if (name === 'metadata') return metadata(request, url, options);
  if (method === 'POST' && name === '') return transaction(stored, body, options);
  if (!name.includes('/')) return search(stored, name, url.searchParams);
  if (method === 'DELETE') return json(200, remove(stored, name));
  const kept = stored.get(name);
  if (kept === undefined) return json(404, outcome('not-found'));
  return kept.deleted ? json(410, outcome('deleted')) : json(200, kept.resource);
}

function json(status: number, resource: unknown): FakeAnswer {
  const headers = { 'content-type': 'application/fhir+json;charset=utf-8' };
  return { status, headers, body: toJson(resource) };
}

function outcome(code: string): Data {
  return { resourceType: 'OperationOutcome', issue: [{ severity: 'error', code }] };
}

const searchParams: Record<string, string[]> = {
  Patient: ['identifier'],
  DiagnosticReport: ['identifier', 'patient', 'date', 'code', 'status'],
  Observation: ['identifier', 'patient', 'code', 'body-site'],
};

function metadata(
  request: FakeRequest,
  url: URL,
  { serverIds, software }: FakeOptions,
): FakeAnswer {
  const accept = url.searchParams.get('_format') ?? String(request.headers['accept']);
  const version = /fhirVersion=([\d.]+)/.exec(accept)?.[1] ?? '4.0';
  if (!/json|\*/.test(accept) || version !== '4.0') return json(406, outcome('not-supported'));
  return json(200, {
    resourceType: 'CapabilityStatement',
    status: 'active',
    kind: 'instance',
    fhirVersion: '4.0.1',
    format: ['application/fhir+json'],
    software: { name: software ?? 'Harbour store', version: '1' },
    rest: [
      {
        mode: 'server',
        interaction: [{ code: 'transaction' }],
        resource: Object.entries(searchParams).map(([type, names]) => ({
          type,
          updateCreate: serverIds !== true,
          searchParam: names.map((name) => ({ name, type: 'token' })),
        })),
      },
    ],
  });
}

interface Entry {
  fullUrl?: string;
  resource?: Data;
  request: { method: string; url: string; ifNoneExist?: string; ifMatch?: string };
}

function transaction(stored: Map<string, Kept>, body: string, options: FakeOptions): FakeAnswer {
  const { value } = fromJson(body);
  if (value === undefined) return json(400, outcome('structure'));
  const { entry = [] } = value as { entry?: Entry[] }; // checked below unless the server is lax
  const stores = entry.some(({ resource }) => resource !== undefined);
  if (options.lax !== true && stores && !validateBundle(value).valid) {
    return json(422, outcome('invalid'));
  }
  if (entry.some(({ request }) => request === undefined)) return json(400, outcome('structure'));
  const stale = entry.some(({ request: { url, ifMatch } }) => {
    return ifMatch !== undefined && ifMatch !== `W/"${stored.get(url)?.version}"`;
  });
  if (stale) return json(412, outcome('conflict'));
  const names = new Map(entry.map((one) => [one.fullUrl, nameFor(stored, one)]));
  const answered = entry.map((one) => {
    const name = names.get(one.fullUrl) ?? '';
    if (one.request.method === 'DELETE') return remove(stored, one.request.url);
    // A conditional creation writes nothing where something is found.
    const kept = one.request.method === 'POST' ? stored.get(name) : undefined;
    if (kept !== undefined)
      return { status: '200 OK', location: `${name}/_history/${kept.version}` };
    return put(stored, name, one.resource ?? {}, names);
  });
  return json(200, {
    resourceType: 'Bundle',
    type: `${String((value as Data)['type'])}-response`,
    entry: answered.map((response) => ({ response })),
  });
}

function nameFor(stored: Map<string, Kept>, { resource, request, fullUrl }: Entry): string {
  const [type = '', inUrl] = request.url.split('?');
  const query = inUrl ?? request.ifNoneExist;
  if (query === undefined) return type;
  const token = unescaped(new URLSearchParams(query).get('identifier') ?? '');
  const known = [...stored].find(
    ([name, kept]) =>
      name.startsWith(`${type}/`) &&
      !kept.deleted &&
      listOf(kept.resource['identifier']).some(
        (one) => `${one['system']}|${one['value']}` === token,
      ),
  );
  return known?.[0] ?? `${resource?.['resourceType']}/server-${fullUrl?.slice(-12)}`;
}

function put(
  stored: Map<string, Kept>,
  name: string,
  sent: Data,
  names: ReadonlyMap<string | undefined, string>,
): Data {
  const text = toJson({ ...sent, id: name.split('/')[1] }).replace(
    /"reference":"(urn:uuid:[^"]+)"/g,
    (_, urn: string) => `"reference":"${names.get(urn) ?? urn}"`,
  );
  const resource = fromJson(text).value as Data; // made from an object just above
  const before = stored.get(name);
  const same = before?.deleted === false && withoutMeta(before.resource) === withoutMeta(resource);
  const version = same ? before.version : (before?.version ?? 0) + 1;
  const meta = { versionId: String(version), lastUpdated: '2031-04-17T12:00:00Z' };
  stored.set(name, { resource: { ...resource, meta }, version, deleted: false });
  const status = before === undefined || before.deleted ? '201 Created' : '200 OK';
  return { status, location: `${name}/_history/${version}`, etag: `W/"${version}"` };
}

function withoutMeta({ meta: _, ...resource }: Data): string {
  return toJson(resource);
}

function remove(stored: Map<string, Kept>, name: string): Data {
  const kept = stored.get(name);
  if (kept !== undefined) kept.deleted = true;
  return { status: '204' };
}

function search(stored: Map<string, Kept>, type: string, params: URLSearchParams): FakeAnswer {
  const found = [...stored]
    .filter(([name, { deleted }]) => name.startsWith(`${type}/`) && !deleted)
    .map(([, { resource }]) => resource)
    .filter((resource) => [...params].every(([name, value]) => matches(resource, name, value)));
  return json(200, {
    resourceType: 'Bundle',
    type: 'searchset',
    total: found.length,
    entry: found.map((resource) => ({ resource, search: { mode: 'match' } })),
  });
}

function matches(resource: Data, name: string, value: string): boolean {
  const tokens = (list: Data[], key: string): boolean =>
    list.some((one) => `${one['system']}|${one[key]}` === unescaped(value));
  const codings = (concept: unknown): Data[] => listOf((concept as Data | undefined)?.['coding']);
  switch (name) {
    case 'identifier':
      return tokens(listOf(resource['identifier']), 'value');
    case 'patient':
      return (resource['subject'] as Data | undefined)?.['reference'] === `Patient/${value}`;
    case 'date':
      return JSON.stringify(resource['effectivePeriod'] ?? '').includes(value);
    case 'code':
      return tokens(codings(resource['code']), 'code');
    case 'body-site':
      return tokens(codings(resource['bodySite']), 'code');
    case 'status':
      return resource['status'] === value;
    default:
      return true;
  }
}

/** @see https://hl7.org/fhir/R4/search.html#escaping */
function unescaped(token: string): string {
  return token.replace(/\\([\\$,|])/g, '$1');
}

function listOf(value: unknown): Data[] {
  return Array.isArray(value) ? value : [];
}
