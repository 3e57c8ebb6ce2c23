import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface Look {
  readonly width?: number;
  readonly dark?: boolean;
  /** For axe, which the test puts in; the page itself forbids scripts from elsewhere. */
  readonly bypassCSP?: boolean;
}

/** The page with what went wrong in it: messages, errors, and requests to elsewhere. */
export async function opened(
  browser: Browser,
  url: string,
  { width = 1280, dark = false, bypassCSP = false }: Look = {},
): Promise<{ page: Page; context: BrowserContext; wrong: string[] }> {
  const context = await browser.newContext({
    bypassCSP,
    viewport: { width, height: width < 500 ? 740 : 900 },
    colorScheme: dark ? 'dark' : 'light',
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on('console', (message) => wrong.push(message.text()));
  page.on('pageerror', (error) => wrong.push(error.message));
  page.on('request', (request) => {
    const isOwn = request.url().startsWith(url) || /^(data|about|blob):/.test(request.url());
    if (!isOwn) wrong.push(request.url());
  });
  await page.goto(url);
  return { page, context, wrong };
}

export async function begin(page: Page, protocol: string): Promise<void> {
  await page.selectOption('#protocol', protocol);
  await page.fill('#person', 'Invented Rower');
  await page.fill('#number', 'Q-417');
  await page.fill('#examiner', 'Invented Nurse');
  await page.click('button[type=submit]');
  await page.waitForSelector('#page');
}

/** The control of an answer: its place among the options of the question. */
export function optionOf(page: Page, question: string, code: string) {
  return page.locator(`[id="${question}"] input[value="${code}"]`);
}

/** Opens a page of the form by its address. */
export async function openPage(page: Page, linkId: string): Promise<void> {
  await page.evaluate(`location.hash = '#' + ${JSON.stringify(encodeURIComponent(linkId))}`);
  await page.waitForTimeout(300);
}

/** Moves on by the tabulator until the element has focus; it fails where that is never so. */
export async function tabTo(page: Page, selector: string): Promise<void> {
  for (let pressed = 0; pressed < 300; pressed += 1) {
    const isThere = await page.evaluate(
      `document.activeElement?.matches(${JSON.stringify(selector)}) ?? false`,
    );
    if (isThere === true) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard does not reach ${selector}`);
}

export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const found = await page.evaluate(
    "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ' ' + nodes[0].html.slice(0, 160)))",
  );
  return found as string[]; // made of strings by the line above
}
