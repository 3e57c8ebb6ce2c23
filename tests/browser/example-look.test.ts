import type { Server } from 'node:http';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../examples/browser/serve.ts';
import { begin, opened, openPage, optionOf, violations } from './capture-page.ts';
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

describe('the look of the capture example', () => {
  it.each([
    ['desktop', 1280, false],
    ['phone', 360, false],
    ['dark', 1280, true],
    ['phone-dark', 360, true],
  ] as const)(
    'has no axe violation, small target or sideways scroll: %s',
    async (name, width, dark) => {
      const { page } = await opened(browser, url, { width, dark, bypassCSP: true });
      const look = async (step: string): Promise<void> => {
        await page.screenshot({ path: `output/screenshots/capture-${name}-${step}.png` });
        expect(await violations(page), step).toEqual([]);
        expect(
          await page.evaluate('document.documentElement.scrollWidth'),
          step,
        ).toBeLessThanOrEqual(width);
        expect(await page.evaluate(smallTargets), step).toEqual([]);
      };
      await look('start');
      await begin(page, 'neck-lump');
      await openPage(page, 'region/ln-ib');
      await optionOf(page, 'finding/node-palpable/ln-ib/left', 'presence.present').check();
      await optionOf(page, 'region-state/ln-ib/right', 'state.normal').check();
      await page.waitForTimeout(300);
      await page.evaluate('scrollTo(0, 0)');
      await look('region');
      await page.click('#batch');
      await page.selectOption('#batch-what', 'finding/node-palpable');
      await page.locator('dialog .places input:enabled').first().check();
      await look('batch');
      await page.click('text=Say nothing');
      await openPage(page, 'conclusion');
      await look('conclusion');
      await openPage(page, 'region/ln-ib');
      await optionOf(page, 'region-state/ln-ib/right:methods', 'palpation').check();
      await openPage(page, 'conclusion');
      await page.fill('[id="conclusion:text"]', 'One node.');
      await optionOf(page, 'conclusion:concern', 'concern.watch').check();
      await page.check('#read-over');
      await page.click('#sign');
      await page.frameLocator('iframe').locator('text=Invented Rower').first().waitFor();
      await look('signed');
      await page.context().close();
    },
  );
});

/** WCAG 2.2, 2.5.8: 24 px each way, links within a sentence left out; a label is part of its control. */
const smallTargets = `[...document.querySelectorAll('button, select, input, textarea, summary, nav a')]
  .filter((one) => one.checkVisibility())
  .map((one) => ({ one, box: one.getBoundingClientRect() }))
  .filter(({ box }) => box.width < 24 || box.height < 24)
  .map(({ one, box }) => one.outerHTML.slice(0, 80) + ' ' + box.width + 'x' + box.height)`;
