import { chmodSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examplePath, inFolder, run } from '../in-process.ts';

/** In place of a browser: writes what it was called with, and the page, where a PDF should be. */
const standIn = `#!/usr/bin/env node
const { copyFileSync, writeFileSync } = require('node:fs');
const { fileURLToPath } = require('node:url');
const args = process.argv.slice(2);
const out = args.find((one) => one.startsWith('--print-to-pdf=')).slice(15);
copyFileSync(fileURLToPath(args.at(-1)), out);
writeFileSync(__dirname + '/called.json', JSON.stringify(args));
`;

function program(folder: string, name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  chmodSync(path, 0o755);
  return path;
}

const left = (): readonly string[] =>
  readdirSync(tmpdir()).filter((name) => name.startsWith('face-neck-fhir-'));

describe('--pdf', () => {
  it('prints the page by the browser named, and leaves nothing of it elsewhere', () =>
    inFolder(async (cwd) => {
      const before = left();
      const browser = program(cwd, 'browser', standIn);
      const args = [
        'report',
        examplePath('broken-off'),
        '--pdf',
        'a/exam.pdf',
        '--browser',
        browser,
      ];
      expect(await run(args, { cwd })).toEqual({ code: 0, out: '', err: '' });
      const { out: page } = await run(['report', examplePath('broken-off')]);
      expect(readFileSync(join(cwd, 'a/exam.pdf'), 'utf8')).toBe(page);
      expect(readdirSync(join(cwd, 'a'))).toEqual(['exam.pdf']);
      const called: readonly string[] = JSON.parse(readFileSync(join(cwd, 'called.json'), 'utf8'));
      expect(called).toContain('--no-pdf-header-footer');
      expect(called.at(-1)).toMatch(/^file:\/\//);
      expect(left()).toEqual(before);
    }));

  it('prints letters too, and writes page or text beside it where --out is given', () =>
    inFolder(async (cwd) => {
      const browser = program(cwd, 'browser', standIn);
      const pdf = ['--pdf', 'x.pdf', '--browser', browser, '--out', 'x.html'];
      const letter = ['letter', examplePath('neck-lump'), '--to', 'specialist'];
      await run([...letter, '--form', 'html', ...pdf], { cwd });
      const [page, printed] = ['x.html', 'x.pdf'].map((name) =>
        readFileSync(join(cwd, name), 'utf8'),
      );
      expect(printed).toContain('<!DOCTYPE html>');
      expect(page).toBe(printed);
      await run([...letter, ...pdf], { cwd });
      expect(readFileSync(join(cwd, 'x.html'), 'utf8')).toContain('\n\nReferral letter\n\n');
    }));

  it.each([
    ['a browser that fails', '#!/bin/sh\nexit 3\n', 'ended with 3'],
    ['one that prints nothing', '#!/bin/sh\nexit 0\n', 'made no PDF'],
  ])('%s leaves an earlier file as it was, and says so', (_, text, said) =>
    inFolder(async (cwd) => {
      const browser = program(cwd, 'browser', text);
      writeFileSync(join(cwd, 'exam.pdf'), 'earlier');
      const args = ['report', examplePath('broken-off'), '--pdf', 'exam.pdf', '--browser', browser];
      const { code, err } = await run(args, { cwd });
      expect(code).toBe(2);
      expect(err).toContain(said);
      expect(readFileSync(join(cwd, 'exam.pdf'), 'utf8')).toBe('earlier');
      expect(readdirSync(cwd).sort()).toEqual(['browser', 'exam.pdf']);
    }),
  );

  it('needs a browser, and one that is there', () =>
    inFolder(async (cwd) => {
      const exam = examplePath('broken-off');
      const asked = await run(['report', exam, '--pdf', 'x.pdf'], { cwd });
      expect([asked.code, asked.err]).toEqual([
        2,
        expect.stringContaining('--pdf needs --browser'),
      ]);
      const alone = await run(['report', exam, '--browser', 'b'], { cwd });
      expect([alone.code, alone.err]).toEqual([2, expect.stringContaining('goes with --pdf')]);
      const gone = await run(['report', exam, '--pdf', 'x.pdf', '--browser', 'no/such'], { cwd });
      expect([gone.code, gone.err]).toEqual([
        2,
        expect.stringContaining('cannot run no/such: there is no such file or folder'),
      ]);
      expect(existsSync(join(cwd, 'x.pdf'))).toBe(false);
    }));
});
