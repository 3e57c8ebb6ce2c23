import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { root } from './built.ts';

/** Bytes of each validator entry as a bundler writes it for a page, and whether eval is in it. */
export async function sizes(): Promise<void> {
  console.log('\nValidator entries, each alone with all that it needs, for a browser');
  for (const version of ['r4', 'r4b', 'r5']) {
    const { outputFiles } = await build({
      entryPoints: [join(root, 'dist/validate/versions', `${version}.js`)],
      bundle: true,
      minify: true,
      write: false,
      format: 'esm',
      target: 'es2022',
      platform: 'browser',
      logLevel: 'error',
    });
    const bytes = outputFiles[0]?.contents ?? new Uint8Array();
    const zipped = gzipSync(bytes, { level: 9 }).byteLength;
    const text = Buffer.from(bytes).toString('utf8');
    const evals = /\beval\(|new Function\(/.test(text) ? 'needs eval' : 'no eval';
    console.log(
      `validate/${version.padEnd(4)} ${String(bytes.byteLength).padStart(8)} bytes minified ${String(zipped).padStart(8)} gzipped (${(zipped / 1024).toFixed(1)} KB), ${evals}`,
    );
  }
}
