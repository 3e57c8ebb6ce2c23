import { execFile } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { emptyPage, type Renderer } from './shown.ts';

const folder = join(import.meta.dirname, 'smart-forms');
const bundle = join(import.meta.dirname, '../../../output/smart-forms/app.js');

const html = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Form</title>
<body><div id="f"></div><script type="module" src="/app.js"></script>`;

let built: Promise<unknown> | undefined;

/** Installed with the versions that its lock file pins, and put into one file; its fonts are left out. */
function ready(): Promise<unknown> {
  built ??= installed();
  return built;
}

async function installed(): Promise<void> {
  const sources = ['app.mjs', 'package-lock.json'].map((name) =>
    readFile(join(folder, name), 'utf8'),
  );
  const wanted = (await Promise.all(sources)).join('\n');
  const stamp = `${bundle}.txt`;
  if ((await readFile(stamp, 'utf8').catch(() => '')) === wanted) return;
  const quiet = ['--silent', '--ignore-scripts', '--no-audit', '--no-fund'];
  await promisify(execFile)('npm', ['ci', ...quiet, '--prefix', folder]);
  await build({
    entryPoints: [join(folder, 'app.mjs')],
    outfile: bundle,
    bundle: true,
    minify: true,
    format: 'esm',
    define: { 'process.env.NODE_ENV': '"production"' },
    loader: { '.woff': 'empty', '.woff2': 'empty' },
    logLevel: 'error',
  });
  // Written last: an installation that was broken off is made anew.
  await writeFile(stamp, wanted);
}

/** Smart Forms 1.4.0 of the Australian e-Health Research Centre, as npm has it. */
export const smartForms: Renderer = {
  name: 'Smart Forms',
  ready,
  show: async (browser, form) => {
    await ready();
    const { page, elsewhere } = await emptyPage(browser, (pathname) =>
      pathname === '/' ? { body: html } : { path: join(bundle, '..', pathname) },
    );
    await page.waitForFunction('window.smartForms');
    await page.evaluate(`smartForms.show(${JSON.stringify(form)})`);
    await page.locator('[id="choice-conclusion:concern"]').waitFor();
    const answersOf = (linkId: string) => page.locator(`[id="choice-${linkId}"]`);
    const response = async (): Promise<string> =>
      String(await page.evaluate('JSON.stringify(smartForms.response())'));
    return {
      page,
      elsewhere,
      response,
      choose: (linkId, { display = '' }) =>
        answersOf(linkId).getByText(display, { exact: true }).click(),
      pick: async (linkId, { display = '' }) => {
        await answersOf(linkId).fill(display);
        await page.getByRole('option', { name: display, exact: true }).click();
      },
      enter: async (linkId, text) => {
        const field = page.locator(
          ['decimal', 'integer', 'string', 'text'].map((type) => `[id="${type}-${linkId}"]`).join(),
        );
        // At once: the whole form is made anew with each key.
        await field.fill(text);
        // Taken 300 ms after the last change, and not when the field is left.
        await page.waitForTimeout(400);
      },
    };
  },
};
