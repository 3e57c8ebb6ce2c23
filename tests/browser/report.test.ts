import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Exam } from '../../src/index.ts';
import { englishWords, germanWords, toHtml } from '../../src/report/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { english } from '../../src/terminology/languages/language.ts';
import { toldTexts } from '../report/reading/told-once.ts';
import { launch } from './chromium.ts';

const root = join(import.meta.dirname, '../..');
const folder = join(root, 'examples/exams');
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const pictures = join(root, 'output/screenshots');

let browser: Browser;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  browser = await launch();
});
afterAll(() => browser.close());

const spoken = {
  en: { language: english, words: englishWords },
  de: { language: german, words: germanWords },
} as const;

function example(name: string): Exam {
  return JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8'));
}

function html(name: string, tongue: keyof typeof spoken = 'en'): string {
  const checks = { ruleSets: ['horner-signs', 'facial-weakness-signs'] } as const;
  return toHtml(example(name), { checks, ...spoken[tongue] });
}

/** Text of each printed page, as pdftotext (poppler) reads it. */
async function printed(text: string, name: string): Promise<string[]> {
  const { page } = await opened(text, 1000);
  const path = join(pictures, `${name}.pdf`);
  await page.pdf({ preferCSSPageSize: true, path });
  await page.context().close();
  const found = execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' });
  return found.split('\f').slice(0, -1);
}

/** A text without white space, hyphens, and the quotation marks that the style puts around notes. */
function bare(text: string): string {
  return text.replaceAll(/[\s\u00ad\u2010\u201c\u201d-]/g, '');
}

/** The page with every request and console message kept. */
async function opened(
  text: string,
  width: number,
  dark = false,
): Promise<{ page: Page; heard: string[] }> {
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme: dark ? 'dark' : 'light',
    // axe is put in by the test; the page itself forbids scripts.
    bypassCSP: true,
  });
  const page = await context.newPage();
  const heard: string[] = [];
  page.on('request', (request) => heard.push(`request ${request.url().slice(0, 80)}`));
  page.on('console', (message) => heard.push(`console ${message.text()}`));
  page.on('pageerror', (error) => heard.push(`error ${error.message}`));
  await page.setContent(text, { waitUntil: 'load' });
  return { page, heard };
}

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const found = await page.evaluate(
    "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ' ' + nodes[0].html.slice(0, 120)))",
  );
  return found as string[]; // made of strings by the line above
}

describe.each(names)('report of %s in Chromium', (name) => {
  it.each([
    ['light', false],
    ['dark', true],
  ] as const)('has no axe violation, request or message in %s', async (look, dark) => {
    const { page, heard } = await opened(html(name), 1000, dark);
    expect(await violations(page)).toEqual([]);
    expect(heard).toEqual([]);
    await page.screenshot({ path: join(pictures, `${name}-${look}.png`), fullPage: true });
    await page.context().close();
  });

  it('does not scroll sideways at 320 px', async () => {
    const { page } = await opened(html(name), 320);
    const wide = await page.evaluate('document.documentElement.scrollWidth');
    expect(wide).toBeLessThanOrEqual(320);
    await page.screenshot({ path: join(pictures, `${name}-narrow.png`), fullPage: true });
    await page.context().close();
  });

  it.each(['en', 'de'] as const)(
    'prints in %s with patient, status and number on each page, and every statement',
    async (tongue) => {
      const exam = example(name);
      const text = html(name, tongue);
      const pages = await printed(text, `${name}-${tongue}`);
      expect(pages.length).toBeLessThanOrEqual(name === 'yearly-check' ? 5 : 3);
      const { words } = spoken[tongue];
      for (const [at, found] of pages.entries()) {
        expect(found).toContain(words.statusShort[exam.status]);
        for (const { value } of exam.subject.identifiers ?? []) expect(found).toContain(value);
        expect(found).toContain(exam.subject.name?.family);
        expect(found).toContain(
          `${words.pageNumber.page} ${at + 1} ${words.pageNumber.of} ${pages.length}`,
        );
      }
      // Lines are broken where the page is full, in German by hyphens too.
      const whole = bare(pages.join(''));
      const lost = [...toldTexts(text)].filter(
        ([, texts]) => !texts.every((one) => whole.includes(bare(one))),
      );
      expect(lost).toEqual([]);
    },
  );

  it('begins an appendix on a page of its own', async () => {
    const text = toHtml(example(name), { appendix: true });
    const pages = await printed(text, `${name}-appendix`);
    const at = pages.findIndex((one) => one.includes(englishWords.appendix));
    expect(at).toBeGreaterThan(0);
    expect(pages.slice(0, at).join('')).not.toContain(`\n${englishWords.normal}\n`);
    expect(pages[at]?.indexOf(englishWords.appendix)).toBeLessThan(200);
  });

  it.each(['draft', 'corrected', 'entered-in-error'] as const)(
    'says on each printed page that it is %s',
    async (status) => {
      const text = toHtml({ ...example(name), status });
      for (const found of await printed(text, `${name}-${status}`)) {
        expect(found).toContain(englishWords.statusShort[status]);
      }
    },
  );
});

describe('report with hostile text in Chromium', () => {
  it('runs nothing of it', async () => {
    const exam: Exam = JSON.parse(readFileSync(join(folder, 'broken-off.json'), 'utf8'));
    const text = '<img src=x onerror="document.title=1"><script>document.title=1</script></style>';
    const statements = exam.statements.map((statement) => ({ ...statement, note: text }));
    const { page, heard } = await opened(toHtml({ ...exam, statements }), 1000);
    expect(await page.title()).toBe('Examination of face and neck');
    expect(await page.locator('img, script').count()).toBe(0);
    expect(heard).toEqual([]);
    await page.context().close();
  });
});
