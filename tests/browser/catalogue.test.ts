import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { cataloguePage } from '../../src/generate/catalogue/page.ts';
import { launch } from './chromium.ts';
import { openPage, violations } from './open-page.ts';

const html = cataloguePage();
let browser: Browser;

beforeAll(async () => {
  browser = await launch();
}, 60_000);

afterAll(async () => {
  await browser.close();
});

it.each([
  ['on a desktop', 1280, false],
  ['in the dark', 1280, true],
  ['on a phone', 390, false],
] as const)(
  'the page of all codes breaks no rule of axe and loads nothing %s',
  async (_, width, dark) => {
    const { page, heard } = await openPage(browser, html, { width, dark, bypassCSP: true });
    expect(await violations(page)).toEqual([]);
    expect(heard).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
  },
  120_000,
);

it('is gone through by the keyboard, from the list of tables to an entry', async () => {
  const { page } = await openPage(browser, html);
  const focused = () => page.evaluate("document.activeElement.getAttribute('href')");
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('#regions');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await page.evaluate('location.hash')).toBe('#findings');
  // The next stop behind the place that was gone to: the heading of the table, then its first entry.
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  expect(await focused()).toMatch(/^#findings-/);
}, 60_000);
