import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build, type Metafile } from 'esbuild';
import { fresh } from './fresh.ts';

export interface Size {
  /** Bytes, minified. */
  readonly minified: number;
  /** Bytes of the same after gzip. */
  readonly gzip: number;
}

/** An entry of the installed package with all that it needs, as a bundler writes it for a page. */
export async function bundled(
  name: string,
  platform: 'browser' | 'node',
): Promise<{ size: Size; inputs: Metafile['inputs'] }> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: `export * from '${name}'`, resolveDir: fresh },
    absWorkingDir: join(fresh),
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    format: 'esm',
    target: 'es2022',
    platform,
    logLevel: 'silent',
  });
  const bytes = outputFiles[0]?.contents ?? new Uint8Array();
  return {
    size: { minified: bytes.byteLength, gzip: gzipSync(bytes, { level: 9 }).byteLength },
    inputs: metafile.inputs,
  };
}
