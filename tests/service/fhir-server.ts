import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { Socket } from 'node:net';

/**
 * What the server does with the next transaction. `store-and-drop`: it stores everything, and the
 * connection breaks before the answer; `half`: the same in the middle of the answer; `late`: it answers
 * nothing, and stores everything 700 ms later; `held`: when the test says so.
 */
export type Behaviour =
  | 'answer'
  | 'busy'
  | 'too-many'
  | 'too-many-until'
  | 'race'
  | 'refuse'
  | 'hang'
  | 'late'
  | 'held'
  | 'half'
  | 'store-and-drop'
  | 'drop'
  | 'html'
  | 'outcome'
  | 'redirect'
  | 'junk';

export interface FhirServer {
  readonly url: string;
  /** Each resource by type and id, with the number of its versions: equal content makes no new one. */
  readonly resources: ReadonlyMap<string, { readonly text: string; readonly versions: number }>;
  /** Every content that a resource had, oldest first. */
  readonly history: (url: string) => readonly string[];
  /** Transactions; not what was asked for. */
  readonly received: () => number;
  behave(next: (text: string) => Behaviour): void;
  /** Works off what is held. */
  release(): void;
  /** Breaks every connection and listens no more; what it stored stays. */
  kill(): Promise<void>;
  restart(): Promise<void>;
}

/** A stand-in for a FHIR server on loopback: transactions of PUT entries, as R4's http page tells. */
export async function startFhirServer(): Promise<FhirServer> {
  const resources: Resources = new Map();
  const history: [url: string, text: string][] = [];
  const held: (() => void)[] = [];
  let received = 0;
  let behaviour: (text: string) => Behaviour = () => 'answer';
  let server: Server;
  let port = 0;
  const sockets = new Set<Socket>();

  const take = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    if (request.method === 'GET') {
      read(request.url?.replace('/fhir/', '') ?? '', response, resources);
      return;
    }
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk);
    received += 1;
    const text = Buffer.concat(chunks).toString('utf8');
    const next = behaviour(text);
    if (next === 'held') held.push(() => store(JSON.parse(text), resources, history));
    else reply(text, next, response, resources, history);
  };

  const listen = (): Promise<void> => {
    server = createServer((request, response) => {
      take(request, response).catch(() => response.destroy());
    });
    server.on('connection', (socket) => {
      sockets.add(socket);
      socket.on('close', () => sockets.delete(socket));
    });
    return new Promise((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, '127.0.0.1', () => {
        const address = server.address();
        if (typeof address === 'object' && address !== null) port = address.port;
        resolve();
      });
    });
  };

  await listen();
  return {
    url: `http://127.0.0.1:${port}/fhir`,
    resources,
    history: (url) => history.flatMap(([of, text]) => (of === url ? [text] : [])),
    received: () => received,
    behave: (next) => {
      behaviour = next;
    },
    release: () => {
      for (const work of held.splice(0)) work();
    },
    kill: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        for (const socket of sockets) socket.destroy();
      }),
    restart: listen,
  };
}

type Resources = Map<string, { text: string; versions: number }>;

const json = { 'content-type': 'application/fhir+json' };

function read(url: string, response: ServerResponse, resources: Resources): void {
  const known = resources.get(url);
  if (known === undefined) response.writeHead(404, json).end('{"resourceType":"OperationOutcome"}');
  else response.writeHead(200, { ...json, etag: `W/"${known.versions}"` }).end(known.text);
}

function reply(
  text: string,
  behaviour: Exclude<Behaviour, 'held'>,
  response: ServerResponse,
  resources: Resources,
  history: [string, string][],
): void {
  switch (behaviour) {
    case 'hang':
      return;
    case 'late':
      setTimeout(() => store(JSON.parse(text), resources, history), 700).unref();
      return;
    case 'race':
      response.writeHead(409, json).end('{"resourceType":"OperationOutcome"}');
      return;
    case 'too-many-until': {
      const until = new Date(Date.now() + 1_000).toUTCString();
      response.writeHead(429, { 'retry-after': until }).end();
      return;
    }
    case 'drop':
      response.destroy();
      return;
    case 'busy':
      response.writeHead(503).end();
      return;
    case 'too-many':
      response.writeHead(429, { 'retry-after': '0' }).end();
      return;
    case 'refuse':
      response.writeHead(422, json).end('{"resourceType":"OperationOutcome"}');
      return;
    case 'html':
      response.writeHead(200, { 'content-type': 'text/html' }).end('<p>Welcome</p>');
      return;
    case 'outcome':
      response.writeHead(200, json).end('{"resourceType":"OperationOutcome","issue":[]}');
      return;
    case 'redirect':
      response.writeHead(307, { location: '/fhir' }).end();
      return;
    case 'junk':
      response.writeHead(200, json).end(Buffer.alloc(11_000_000, 'x'));
      return;
  }
  const stored = store(JSON.parse(text), resources, history);
  if (stored === undefined) {
    response.writeHead(412, json).end('{"resourceType":"OperationOutcome"}');
    return;
  }
  const answer = JSON.stringify(stored);
  if (behaviour === 'store-and-drop') {
    response.destroy();
  } else if (behaviour === 'half') {
    response.writeHead(200, { ...json, 'content-length': Buffer.byteLength(answer) });
    response.write(answer.slice(0, answer.length / 2), () => response.destroy());
  } else {
    response.writeHead(200, json).end(answer);
  }
}

interface Transaction {
  readonly entry: readonly {
    readonly request: {
      readonly method: string;
      readonly url: string;
      readonly ifMatch?: string;
      readonly ifNoneExist?: string;
    };
    readonly resource: object;
  }[];
}

/**
 * Undefined, and nothing stored, where a version that a request names is not that of the resource.
 * @see https://hl7.org/fhir/R4/http.html#transaction
 */
function store(
  bundle: Transaction,
  resources: Resources,
  history: [string, string][],
): object | undefined {
  const stale = bundle.entry.some(({ request: { url, ifMatch } }) => {
    return ifMatch !== undefined && ifMatch !== `W/"${resources.get(url)?.versions}"`;
  });
  if (stale) return undefined;
  const entry = bundle.entry.map(({ request, resource }) => {
    const { method, ifNoneExist } = request;
    const matched = method === 'POST' && ifNoneExist !== undefined;
    if (method !== 'PUT' && !matched) throw new TypeError('expected PUT, or POST with a condition');
    // What is made by a condition is kept under it, and never written again.
    const url = matched ? `${request.url}?${ifNoneExist}` : request.url;
    if (matched && resources.has(url)) return { response: { status: '200 OK' } };
    const text = JSON.stringify(resource);
    const known = resources.get(url);
    const versions = (known?.versions ?? 0) + (known?.text === text ? 0 : 1);
    if (known?.text !== text) {
      resources.set(url, { text, versions });
      history.push([url, text]);
    }
    const status = known === undefined ? '201 Created' : '200 OK';
    return { response: { status, etag: `W/"${versions}"` } };
  });
  return { resourceType: 'Bundle', type: 'transaction-response', entry };
}
