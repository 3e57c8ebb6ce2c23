/// <reference types="node" />
import { execFile } from 'node:child_process';
import { mkdtemp, rename, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { makeFolder } from '../../convert/bulk/output/make-folder.ts';
import { type OptionTable, type OptionValues, textOption } from '../arguments.ts';
import { fileFailure, UsageError } from '../failure.ts';
import type { CliIo } from '../io.ts';
import { outputTo } from './output.ts';

/** Options of commands that write a page for people. */
export const pdfOptions: OptionTable = {
  pdf: {
    type: 'text',
    value: 'PATH',
    help: 'Print the page to this PDF file, with the browser that --browser names',
  },
  browser: {
    type: 'text',
    value: 'PATH',
    help: 'With --pdf: Chromium or a browser based on it, which prints the page',
  },
};

/** Where the PDF goes and what makes it; undefined where none is asked for. */
export interface PdfCall {
  readonly path: string;
  readonly browser: string;
}

export function pdfCallOf(options: OptionValues): PdfCall | undefined {
  const path = textOption(options, 'pdf');
  const browser = textOption(options, 'browser');
  if (path === undefined && browser === undefined) return undefined;
  if (path === undefined) throw new UsageError('--browser goes with --pdf');
  if (browser === undefined) throw new UsageError('--pdf needs --browser: the program that prints');
  return { path, browser };
}

/**
 * Prints a page where `--pdf` says, and writes it, or the text in its place, where `--out` does; to
 * standard output only where neither is given.
 */
export async function writePage(
  io: CliIo,
  options: OptionValues,
  html: string,
  pdf: PdfCall | undefined,
  text: string = html,
): Promise<void> {
  const out = textOption(options, 'out');
  if (pdf !== undefined) await writePdf(io, html, pdf);
  if (pdf !== undefined && out === undefined) return;
  const output = outputTo(io, out);
  await output.write(text);
  await output.finish();
}

/** A page takes some seconds; an exam of thousands of statements more. */
const LONGEST = 180_000;

/**
 * Prints a page to a file that appears whole or not at all. The page and the profile of the browser
 * stand in a folder that nobody else can read, and are removed.
 */
async function writePdf(io: CliIo, html: string, { path, browser }: PdfCall): Promise<void> {
  const target = resolve(io.cwd, path);
  const part = `${target}.${process.pid}.part`;
  const folder = await mkdtemp(join(tmpdir(), 'face-neck-fhir-'));
  try {
    await makeFolder(dirname(target));
    const page = join(folder, 'page.html');
    await writeFile(page, html, { mode: 0o600 });
    await print(resolve(io.cwd, browser), [
      '--headless',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--no-pdf-header-footer',
      // Chromium has no sandbox for the superuser. The page has no script and loads nothing.
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      `--user-data-dir=${join(folder, 'profile')}`,
      `--print-to-pdf=${part}`,
      pathToFileURL(page).href,
    ]);
    const made = await stat(part).catch(() => undefined);
    if (made === undefined || made.size === 0) throw new UsageError(`${browser} made no PDF`);
    await rename(part, target).catch((thrown: unknown) => {
      throw fileFailure('write', path, thrown);
    });
  } finally {
    await rm(part, { force: true }).catch(() => {});
    await rm(folder, { recursive: true, force: true }).catch(() => {});
  }

  function print(program: string, args: readonly string[]): Promise<void> {
    return new Promise((done, failed) => {
      execFile(program, args, { timeout: LONGEST }, (thrown) => {
        if (thrown === null) done();
        else if (typeof thrown.code === 'string') failed(fileFailure('run', browser, thrown));
        else failed(new UsageError(`${browser} ended with ${thrown.code ?? thrown.signal}`));
      });
    });
  }
}
