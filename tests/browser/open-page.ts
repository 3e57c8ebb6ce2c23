import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface PageLook {
  readonly width?: number;
  readonly dark?: boolean;
  /** Only so that axe can run. */
  readonly bypassCSP?: boolean;
}

/** A page in a context of its own, and what it asked of a network, logged or threw. */
export async function openPage(
  browser: Browser,
  html: string,
  { width = 1000, dark = false, bypassCSP = false }: PageLook = {},
): Promise<{ readonly page: Page; readonly heard: string[] }> {
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme: dark ? 'dark' : 'light',
    acceptDownloads: true,
    bypassCSP,
  });
  const page = await context.newPage();
  const heard: string[] = [];
  page.on('request', (request) => heard.push(`request ${request.url().slice(0, 80)}`));
  page.on('console', (message) => heard.push(`console ${message.text()}`));
  page.on('pageerror', (error) => heard.push(`error ${error.message}`));
  await page.setContent(html, { waitUntil: 'load' });
  return { page, heard };
}

/** What axe finds, by rule and first element. */
export async function violations(page: Page): Promise<unknown> {
  await page.evaluate(axe);
  return page.evaluate(
    "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ' ' + nodes[0].html.slice(0, 160)))",
  );
}
