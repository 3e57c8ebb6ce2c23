/**
 * Bundles the page and serves it on loopback.
 * Run: npm run example:browser
 */
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = import.meta.dirname;

const types: ReadonlyMap<string, string> = new Map([
  ['index.html', 'text/html; charset=utf-8'],
  ['style.css', 'text/css; charset=utf-8'],
  ['app.js', 'text/javascript; charset=utf-8'],
]);

/** The page on a free port of loopback, or on the one given. */
export async function serve(port = 0): Promise<{ url: string; server: Server }> {
  const bundled = await build({
    entryPoints: [join(here, 'app.ts')],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    logLevel: 'silent',
  });
  const script = bundled.outputFiles[0]?.text ?? '';
  const server = createServer(async (request, response) => {
    const name = request.url === '/' ? 'index.html' : (request.url ?? '').slice(1);
    const type = types.get(name);
    if (type === undefined) {
      response.writeHead(404).end();
      return;
    }
    const body = name === 'app.js' ? script : await readFile(join(here, name));
    response.writeHead(200, { 'content-type': type }).end(body);
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
