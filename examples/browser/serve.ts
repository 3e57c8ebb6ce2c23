/**
 * Bundles the page and serves it on loopback.
 * Run: npm run example:browser
 */
import { createServer, type Server } from 'node:http';
import { pathToFileURL } from 'node:url';
import { pageFiles } from './build.ts';

/** The page on a free port of loopback, or on the one given. */
export async function serve(port = 0): Promise<{ url: string; server: Server }> {
  const files = await pageFiles();
  const server = createServer((request, response) => {
    const name = request.url === '/' ? 'index.html' : (request.url ?? '').slice(1);
    const file = files.get(name);
    if (file === undefined) {
      response.writeHead(404).end();
      return;
    }
    response
      .writeHead(200, {
        'content-type': file.type,
        'cache-control': 'no-cache',
        'x-content-type-options': 'nosniff',
        'content-security-policy': "frame-ancestors 'none'",
      })
      .end(file.text);
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const address = server.address();
  const bound = typeof address === 'object' && address !== null ? address.port : port;
  return { url: `http://127.0.0.1:${bound}/`, server };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { url } = await serve(Number(process.env.PORT ?? 8080));
  console.log(`Open ${url} (Ctrl+C ends it)`);
}
