import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { Socket } from 'node:net';

/**
 * What the server does with the next transaction. `store-and-drop`: it stores everything, and the
 * connection breaks before the answer; `half`: the same in the middle of the answer.
 */
export type Behaviour =
  | 'answer'
  | 'busy'
  | 'too-many'
  | 'refuse'
  | 'hang'
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
  readonly received: () => number;
  behave(next: () => Behaviour): void;
  /** Breaks every connection and listens no more; what it stored stays. */
  kill(): Promise<void>;
  restart(): Promise<void>;
}

/** A stand-in for a FHIR server on loopback: transactions of PUT entries, as R4's http page tells. */
export async function startFhirServer(): Promise<FhirServer> {
  const resources = new Map<string, { text: string; versions: number }>();
  let received = 0;
  let behaviour = (): Behaviour => 'answer';
  let server: Server;
  let port = 0;
  const sockets = new Set<Socket>();

  const take = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk);
    received += 1;
    reply(Buffer.concat(chunks).toString('utf8'), behaviour(), response, resources);
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
    received: () => received,
    behave: (next) => {
      behaviour = next;
    },
    kill: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        for (const socket of sockets) socket.destroy();
      }),
    restart: listen,
  };
}

const json = { 'content-type': 'application/fhir+json' };

function reply(
  text: string,
  behaviour: Behaviour,
  response: ServerResponse,
  resources: Map<string, { text: string; versions: number }>,
): void {
  switch (behaviour) {
    case 'hang':
      return;
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
  const answer = JSON.stringify(store(JSON.parse(text), resources));
  if (behaviour === 'store-and-drop') {
    response.destroy();
  } else if (behaviour === 'half') {
    response.writeHead(200, { ...json, 'content-length': Buffer.byteLength(answer) });
    response.write(answer.slice(0, answer.length / 2), () => response.destroy());
  } else {
    response.writeHead(200, json).end(answer);
  }
}

/** @see https://hl7.org/fhir/R4/http.html#transaction */
function store(
  bundle: { entry: readonly { request: { method: string; url: string }; resource: object }[] },
  resources: Map<string, { text: string; versions: number }>,
): object {
  const entry = bundle.entry.map(({ request, resource }) => {
    if (request.method !== 'PUT') throw new TypeError('expected PUT');
    const text = JSON.stringify(resource);
    const known = resources.get(request.url);
    if (known?.text !== text) {
      resources.set(request.url, { text, versions: (known?.versions ?? 0) + 1 });
    }
    return { response: { status: known === undefined ? '201 Created' : '200 OK' } };
  });
  return { resourceType: 'Bundle', type: 'transaction-response', entry };
}
