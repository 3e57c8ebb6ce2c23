import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Exam } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
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

function html(name: string): string {
  const exam: Exam = JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8'));
  return toHtml(exam, { checks: { ruleSets: ['horner-signs', 'facial-weakness-signs'] } });
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

  it('prints on A4', async () => {
    const { page } = await opened(html(name), 1000);
    const pdf = await page.pdf({ format: 'A4', path: join(pictures, `${name}.pdf`) });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    await page.context().close();
  });
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
