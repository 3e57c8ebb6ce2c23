import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examplePath } from './in-process.ts';

const root = resolve(import.meta.dirname, '../..');

function start(args: readonly string[], env: Readonly<Record<string, string>> = {}): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', 'src/cli/bin.ts', ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

function ended(child: ChildProcess): Promise<number | null> {
  return new Promise((done) => {
    child.on('close', (code) => done(code));
  });
}

describe('as a process', () => {
  it('export gives the same bytes in two time zones and two locales', async () => {
    const surroundings = [
      ['Pacific/Apia', 'de_DE.UTF-8'],
      ['America/St_Johns', 'tr_TR.UTF-8'],
    ] as const;
    const digests = await Promise.all(
      surroundings.map(async ([TZ, locale]) => {
        const child = start(['export', examplePath('neck-lump')], {
          TZ,
          LC_ALL: locale,
          LANG: locale,
        });
        const digest = createHash('sha256');
        let length = 0;
        child.stdout?.on('data', (chunk: Buffer) => {
          length += chunk.length;
          digest.update(chunk);
        });
        expect(await ended(child)).toBe(0);
        expect(length).toBeGreaterThan(100_000);
        return digest.digest('hex');
      }),
    );
    expect(new Set(digests).size).toBe(1);
  });

  it('stops quietly, with a line, when its reader goes away', async () => {
    const child = start(['export', examplePath('yearly-check')]);
    let told = '';
    child.stderr?.on('data', (chunk: Buffer) => {
      told += chunk.toString();
    });
    child.stdout?.once('data', () => child.stdout?.destroy());
    expect(await ended(child)).toBe(0);
    expect(told).toBe('face-neck-fhir: the reader of the output has gone; stopped\n');
  });
});
