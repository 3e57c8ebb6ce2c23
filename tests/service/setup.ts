import { dirname } from 'node:path';
import { build } from 'esbuild';
import { bundled } from './service.ts';

/** A file for each thread that plain Node runs, so that a start takes a fraction of a second. */
export default async function setup(): Promise<void> {
  await build({
    entryPoints: ['examples/service/serve.ts', 'examples/service/accept-worker.ts'],
    outdir: dirname(bundled),
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'silent',
  });
}
