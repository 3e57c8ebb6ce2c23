import { readFile } from 'node:fs/promises';
import { type FhirRelease, type ReferenceResult, validateCorpus } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import { build, ProgramError } from './java.ts';
import { startServer } from './server.ts';

const usage = `usage: tsx tests/reference/run.ts build [validator] [server]
       tsx tests/reference/run.ts validate R4|R4B|R5 FILE...
       tsx tests/reference/run.ts serve [PORT]`;

/** Exit code: 0 clean, 1 errors found or a program missing, 2 usage. */
async function main([command, ...args]: readonly string[]): Promise<number> {
  if (command === 'build') return buildPrograms(args);
  if (command === 'validate') return validateFiles(args);
  if (command === 'serve') return serve(args[0]);
  console.error(usage);
  return 2;
}

async function buildPrograms(names: readonly string[]): Promise<number> {
  for (const name of names.length > 0 ? names : ['validator']) {
    if (name !== 'validator' && name !== 'server') {
      console.error(usage);
      return 2;
    }
    await build(name);
  }
  return 0;
}

async function validateFiles([name, ...files]: readonly string[]): Promise<number> {
  const version = releases.find((release) => release === name);
  if (version === undefined || files.length === 0) {
    console.error(usage);
    return 2;
  }
  let worst = 0;
  for await (const result of validateCorpus(read(version, files), {
    load: await extensionsPack(),
  })) {
    console.log(resultText(result));
    if (!result.valid) worst = 1;
  }
  return worst;
}

async function* read(version: FhirRelease, files: readonly string[]) {
  for (const id of files) {
    const format = id.endsWith('.xml') ? ('xml' as const) : ('json' as const);
    yield { id, version, format, text: await readFile(id, 'utf8') };
  }
}

function resultText({ id, valid, issues }: ReferenceResult): string {
  const lines = issues.map(
    ({ severity, location, message }) => `  ${severity}  ${location}  ${message}`,
  );
  return [`${id}: ${valid ? 'no errors' : 'errors'}`, ...lines].join('\n');
}

async function serve(port = '0'): Promise<number> {
  const server = await startServer({ port: Number(port) });
  console.log(`${server.url} (ends on Ctrl+C)`);
  await new Promise((resolve) => process.once('SIGINT', resolve));
  await server.stop();
  return 0;
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof ProgramError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
