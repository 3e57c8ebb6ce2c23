import { build } from 'esbuild';
import { bundles } from './programs.ts';

/** Files that plain Node runs, so that a start takes a fraction of a second. */
export default async function setup(): Promise<void> {
  await build({
    entryPoints: {
      add: 'examples/queue/add.ts',
      work: 'examples/queue/work.ts',
      convert: 'src/cli/bin.ts',
    },
    outdir: bundles,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'silent',
    // Packages in CommonJS ask for Node's own modules by require.
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
    },
  });
}
