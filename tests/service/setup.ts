import { build } from 'esbuild';
import { bundled } from './service.ts';

/** One file that plain Node runs, so that a start takes a fraction of a second. */
export default async function setup(): Promise<void> {
  await build({
    entryPoints: ['examples/service/serve.ts'],
    outfile: bundled,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'silent',
  });
}
