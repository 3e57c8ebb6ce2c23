import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  confirmFindings,
  type Proposal,
  parseProposals,
} from '../../src/convert/proposals/index.ts';
import { orThrow } from '../../src/index.ts';
import { germanProposalReviewWords, toProposalReview } from '../../src/report/review/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { examOf } from '../convert/proposals/exam-of.ts';
import { launch } from './chromium.ts';
import { openPage, violations } from './open-page.ts';

const pictures = join(import.meta.dirname, '../../output/screenshots');

const exam = examOf(
  'LEFT EYE: Right ptosis and no ectropion.\n</script><script>document.title=1</script><img src=x onerror=alert(1)> scar.',
  'History: scar of the left temple.\nExamination: No right ptosis. Scar of the left temple.',
);
const { html, asked } = toProposalReview([exam]);

let browser: Browser;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  browser = await launch();
});
afterAll(() => browser.close());

const box = (page: Page, number: number): Locator => page.locator(`#row-${number - 1}`);

async function choose(row: Locator, label: string, option: string): Promise<void> {
  await row.getByLabel(label, { exact: true }).selectOption(option);
}

/** The lines that the button saves, read as the command line reads them. */
async function saved(page: Page, button = 'Save decisions'): Promise<readonly Proposal[]> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('confirmed.ndjson');
  return orThrow('read the file', parseProposals(readFileSync(await file.path(), 'utf8')));
}

describe('page of proposals in Chromium', () => {
  it.each([
    ['light', { dark: false }, {}],
    ['dark', { dark: true }, { language: german, words: germanProposalReviewWords }],
  ] as const)('has no axe violation, all controls open, in %s', async (look, dark, language) => {
    const localized = toProposalReview([exam], language).html;
    const { page } = await openPage(browser, localized, { ...dark, bypassCSP: true });
    for (const value of ['confirm', 'change']) {
      for (const radio of await page.locator(`input[value="${value}"]`).all()) await radio.check();
      expect(await violations(page)).toEqual([]);
    }
    await page.screenshot({ path: join(pictures, `proposals-${look}.png`), fullPage: true });
    await page.context().close();
  });

  it('does not scroll sideways at 360 px', async () => {
    const { page } = await openPage(browser, html, { width: 360 });
    for (const radio of await page.locator('input[value="change"]').all()) await radio.check();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    await page.screenshot({ path: join(pictures, 'proposals-narrow.png') });
    await page.context().close();
  });

  it('asks nothing of a network, runs nothing of a note, and chooses nothing beforehand', async () => {
    const { page, heard } = await openPage(browser, html);
    expect(heard).toEqual([]);
    expect(await page.title()).toBe('Proposals to confirm');
    expect(await page.locator('#count').textContent()).toBe(`0 of ${asked} decided`);
    expect(await page.locator('input:checked').count()).toBe(0);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.locator('pre').first().textContent()).toContain(
      '</script><script>document.title=1</script><img src=x onerror=alert(1)>',
    );
    await box(page, 2).getByLabel('Confirm', { exact: true }).check();
    expect(await box(page, 2).locator('select:visible').count()).toBe(2);
    for (const select of await box(page, 2).locator('select:visible').all()) {
      expect(await select.inputValue()).toBe('');
    }
    await page.context().close();
  });

  it('saves exactly what was confirmed, and an exam takes it', async () => {
    const { page, heard } = await openPage(browser, html);
    // 1 ptosis as proposed, 2 ectropion with what is open, 3 scar rejected, 4 scar of the history changed.
    await box(page, 1).getByLabel('Confirm', { exact: true }).check();
    await box(page, 2).getByLabel('Confirm', { exact: true }).check();
    await choose(box(page, 2), 'Region', 'lid-lower');
    await choose(box(page, 2), 'Side', 'both');
    await box(page, 3).getByLabel('Reject').check();
    await box(page, 4).getByLabel('Change and confirm').check();
    await choose(box(page, 4), 'Region', 'temple');
    await choose(box(page, 4), 'Side', 'left');
    await choose(box(page, 4), 'Present or absent', 'indeterminate');
    await page.getByLabel('Your name').fill('Tom Hawser');
    const lines = await saved(page);
    expect(lines).toHaveLength(4);
    expect(lines[2]).toMatchObject({ rejected: { by: 'Tom Hawser' } });
    expect(lines[2]).not.toHaveProperty('confirmed');
    const made = orThrow('confirm', confirmFindings(exam, lines));
    expect(made.statements.slice(0, 2)).toEqual(exam.statements);
    expect(made.statements.slice(2).map(({ key: _, ...one }) => one)).toMatchObject([
      { finding: 'lid-position.ptosis', region: 'lid-upper', side: 'right', presence: 'present' },
      { finding: 'lid-turn.ectropion', region: 'lid-lower', side: 'both', presence: 'absent' },
      { region: 'temple', side: 'left', presence: 'indeterminate' },
    ]);
    expect(made.statements).toHaveLength(5);
    expect(made.examiners.map(({ name }) => name?.text)).toEqual(['Nell Berth', 'Tom Hawser']);
    expect(made.history).toHaveLength(1);
    expect(heard.filter((one) => !one.startsWith('request blob:'))).toEqual([]);
    await page.context().close();
  });

  it('saves nothing without a name, an answer to what is open, or with opposites', async () => {
    const { page } = await openPage(browser, html);
    const told = page.locator('#told');
    const save = page.getByRole('button', { name: 'Save decisions' });
    await save.click();
    expect(await told.textContent()).toBe('Not saved: nothing is decided yet.');
    await box(page, 2).getByLabel('Confirm', { exact: true }).check();
    await save.click();
    expect(await told.textContent()).toBe('Not saved: your name is missing.');
    expect(await page.evaluate('document.activeElement.id')).toBe('by');
    await page.getByLabel('Your name').fill(' Tom Hawser ');
    await save.click();
    expect(await told.textContent()).toContain('1 still need an answer, the first is number 2');
    expect(await page.evaluate('document.activeElement.id')).toBe('region-1');
    await box(page, 2).getByRole('button', { name: 'Take the decision back' }).click();
    expect(await page.locator('#count').textContent()).toBe(`0 of ${asked} decided`);
    // "Right ptosis" and "No right ptosis".
    await box(page, 1).getByLabel('Confirm', { exact: true }).check();
    await box(page, 5).getByLabel('Confirm', { exact: true }).check();
    await save.click();
    expect(await told.textContent()).toContain('number 5 says the opposite');
    await box(page, 5).getByLabel('Reject').check();
    const lines = await saved(page);
    expect(lines.map(({ confirmed, rejected }) => [confirmed?.by, rejected?.by])).toEqual([
      ['Tom Hawser', undefined],
      [undefined, 'Tom Hawser'],
    ]);
    await page.context().close();
  });

  it('goes on with what was decided before, and keeps it', async () => {
    const first = await openPage(browser, html);
    await box(first.page, 1).getByLabel('Confirm', { exact: true }).check();
    await first.page.getByLabel('Your name').fill('Tom Hawser');
    const decided = await saved(first.page);
    await first.page.context().close();
    const next = toProposalReview([exam], {
      decided,
      language: german,
      words: germanProposalReviewWords,
    });
    expect(next.asked).toBe(asked - 1);
    const { page } = await openPage(browser, next.html);
    // The opposite of what was confirmed before.
    const last = box(page, 4);
    await last.getByLabel('Bestätigen', { exact: true }).check();
    await page.getByLabel('Ihr Name').fill('Nell Berth');
    await page.getByRole('button', { name: 'Entscheidungen speichern' }).click();
    expect(await page.locator('#told').textContent()).toContain('das Gegenteil');
    await last.getByLabel('Verwerfen').check();
    const all = await saved(page, 'Entscheidungen speichern');
    expect(all[0]).toEqual(decided[0]);
    expect(all).toHaveLength(2);
    await page.context().close();
  });

  it('works by keyboard alone', async () => {
    const { page } = await openPage(browser, html);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    expect(await page.locator('#count').textContent()).toBe(`1 of ${asked} decided`);
    const press = async (id: string): Promise<void> => {
      for (let at = 0; at < 100; at += 1) {
        if ((await page.evaluate('document.activeElement.id')) === id) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`not reached: ${id}`);
    };
    await press('next');
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.name')).toBe('how-1');
    await page.keyboard.press('Space');
    await press('region-1');
    await page.keyboard.press('ArrowDown');
    await press('side-1');
    await page.keyboard.press('ArrowDown');
    await press('by');
    await page.keyboard.type('Tom Hawser');
    await press('save');
    const download = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    const text = readFileSync(await (await download).path(), 'utf8');
    const lines = orThrow('read the file', parseProposals(text));
    expect(orThrow('confirm', confirmFindings(exam, lines)).statements).toHaveLength(4);
    await page.context().close();
  });

  it('asks before it is closed with decisions that are not saved, and only then', async () => {
    const { page } = await openPage(browser, html);
    const asksOnClose = (): Promise<boolean> =>
      page.evaluate("!window.dispatchEvent(new Event('beforeunload', { cancelable: true }))");
    expect(await asksOnClose()).toBe(false);
    await box(page, 1).getByLabel('Confirm', { exact: true }).check();
    expect(await asksOnClose()).toBe(true);
    await page.getByLabel('Your name').fill('Tom Hawser');
    await saved(page);
    expect(await asksOnClose()).toBe(false);
    await page.context().close();
  });
});
