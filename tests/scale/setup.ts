import { build } from 'esbuild';
import { program } from './programs.ts';

/** The command line as one file that plain Node runs, so that a start takes a fraction of a second. */
export default async function setup(): Promise<void> {
  await build({
    entryPoints: ['src/cli/bin.ts'],
    outfile: program,
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
