import { readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../examples/browser/serve.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { launch } from './chromium.ts';

let browser: Browser;
let server: Server;
let url: string;
beforeAll(async () => {
  browser = await launch();
  ({ server, url } = await serve());
});
afterAll(async () => {
  await browser.close();
  server.close();
});

/** The page with what went wrong in it: messages, errors, and violations of its security policy. */
async function opened(bypassCSP = false): Promise<{ page: Page; wrong: string[] }> {
  const context = await browser.newContext({ bypassCSP });
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on('console', (message) => wrong.push(message.text()));
  page.on('pageerror', (error) => wrong.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(url)) wrong.push(request.url());
  });
  await page.goto(url);
  return { page, wrong };
}

async function addFinding(page: Page, side: string): Promise<void> {
  await page.selectOption('#region', 'cheek-malar');
  if (side !== '') await page.selectOption('#side', side);
  await page.selectOption('#finding', 'naevus');
  await page.check('input[value=present]');
  await page.fill('#note', '"brown" <3 mm> & flat');
  await page.click('button[type=submit]');
}

describe('the browser example', () => {
  it('exports a valid bundle in the page, under a strict policy', async () => {
    const { page, wrong } = await opened();
    await addFinding(page, 'left');
    await page.fill('#conclusion', 'One mole, nothing else looked at.');
    await page.click('#export');
    expect(await page.textContent('#state')).toMatch(/^Valid FHIR R4: \d+ resources$/);
    const bundle = JSON.parse(await page.inputValue('#bundle'));
    expect(validateBundle(bundle).valid).toBe(true);
    expect(JSON.stringify(bundle)).toContain('cheek-malar.left');
    expect(wrong).toEqual([]);
    await page.context().close();
  });

  it('says what is missing and exports nothing when the side was left out', async () => {
    const { page } = await opened();
    await page.evaluate("document.getElementById('side').required = false");
    await addFinding(page, '');
    await page.click('#export');
    expect(await page.textContent('#issues')).toContain('missing-side');
    expect(await page.inputValue('#bundle')).toBe('');
    await page.context().close();
  });

  it('has no axe violation, empty and with an exam', async () => {
    const { page } = await opened(true);
    await page.evaluate(
      readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'),
    );
    const violations = (): Promise<unknown> =>
      page.evaluate('axe.run().then(({ violations }) => violations.map(({ id }) => id))');
    expect(await violations()).toEqual([]);
    await addFinding(page, 'left');
    await page.fill('#conclusion', 'One mole, nothing else looked at.');
    await page.click('#export');
    expect(await page.textContent('#state')).toMatch(/^Valid/);
    expect(await violations()).toEqual([]);
    await page.screenshot({ path: 'output/screenshots/browser-example.png', fullPage: true });
    await page.context().close();
  });
});
