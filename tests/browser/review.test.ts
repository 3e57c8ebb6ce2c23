import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fromCsv, type Mapping } from '../../src/convert/csv/index.ts';
import { parseMappingText } from '../../src/convert/suggest/index.ts';
import { toDryRun, toReview } from '../../src/report/review/index.ts';
import { launch } from './chromium.ts';
import { openPage, violations } from './open-page.ts';

const pictures = join(import.meta.dirname, '../../output/screenshots');

const table = [
  'exam no;Patient;day;MRD1 R (mm);MRD1;Ptosis R;Ptosis L;"<b onclick=""x"">odd</b>";Kommentar',
  'E1;V07;2024-02-15;4.5;4;yes;;"</script><script>document.title=1</script>";ok',
  'E2;V08;2024-02-16;3.5;4;odd;yes;b;',
].join('\n');
const long = 'exam id;item;side;value;unit\nE1;MRD1;R;4.5;mm\nE1;septum;;normal;\nE1;hat;;58;\n';

let browser: Browser;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  browser = await launch();
});
afterAll(() => browser.close());

function box(page: Page, name: string) {
  return page.locator('fieldset', { has: page.locator('legend', { hasText: name }) });
}

async function saved(page: Page): Promise<Record<string, unknown>> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save mapping' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('mapping.json');
  return JSON.parse(readFileSync(await file.path(), 'utf8'));
}

describe('page of a dry run in Chromium', () => {
  const folder = join(import.meta.dirname, '../../examples/convert');
  const text = readFileSync(join(folder, 'vineyard.csv'), 'utf8');
  const file = readFileSync(join(folder, 'vineyard.mapping.json'), 'utf8');
  // Its own test converts with it, and so its form is that of a mapping.
  const mapping = parseMappingText(file).value as Mapping;
  const { html } = toDryRun(text, mapping, { against: { ...mapping, decimalMark: ',' } });

  it.each([
    ['light', false],
    ['dark', true],
  ] as const)('has no axe violation, request or message in %s', async (look, dark) => {
    const { page, heard } = await openPage(browser, html, { dark, bypassCSP: true });
    expect(heard).toEqual([]);
    expect(await violations(page)).toEqual([]);
    await page.screenshot({ path: join(pictures, `dry-run-${look}.png`), fullPage: true });
    await page.context().close();
  });

  it('does not scroll sideways at 360 px', async () => {
    const { page } = await openPage(browser, html, { width: 360 });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    await page.context().close();
  });
});

describe('review page in Chromium', () => {
  it.each([
    ['light', false],
    ['dark', true],
  ] as const)('has no axe violation, contrast included, in %s', async (look, dark) => {
    const { page } = await openPage(browser, toReview(table, { values: true }).html, {
      dark,
      bypassCSP: true,
    });
    for (const value of ['take', 'other']) {
      for (const radio of await page.locator(`input[value="${value}"]`).all()) await radio.check();
      expect(await violations(page)).toEqual([]);
    }
    await page.screenshot({ path: join(pictures, `review-${look}.png`), fullPage: true });
    await page.context().close();
  });

  it('does not scroll sideways at 360 px', async () => {
    const { page } = await openPage(browser, toReview(table, { values: true }).html, {
      width: 360,
    });
    for (const radio of await page.locator('input[value="take"]').all()) await radio.check();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    await page.screenshot({ path: join(pictures, 'review-narrow.png'), fullPage: true });
    await page.context().close();
  });

  it('asks nothing of a network and runs nothing of the export', async () => {
    const { page, heard } = await openPage(browser, toReview(table, { values: true }).html);
    expect(await page.title()).toBe('Review of a mapping');
    expect(await page.locator('#count').textContent()).toBe('0 of 9 decided');
    expect(heard).toEqual([]);
    await page.context().close();
  });

  it('saves nothing that was not decided', async () => {
    const { page } = await openPage(browser, toReview(table, { values: true }).html);
    const mapping = await saved(page);
    expect(mapping).not.toHaveProperty('fields');
    expect(mapping.exam).toEqual({ subject: {}, performed: {}, recorded: {}, examiner: {} });
    await page.context().close();
  });

  it('needs an answer to what is asked, and goes to it', async () => {
    const { page } = await openPage(browser, toReview(table, { values: true }).html);
    const row = page.locator('fieldset', {
      has: page.locator('legend bdi', { hasText: /^MRD1$/ }),
    });
    await row.getByLabel('As proposed').check();
    await page.getByRole('button', { name: 'Save mapping' }).click();
    await page.getByText(/^Not saved/).waitFor();
    expect(await page.evaluate('document.activeElement.dataset.part')).toBe('side');
    await row.getByLabel('Side').selectOption('left');
    await page.getByRole('button', { name: 'Save mapping' }).click();
    expect(await page.evaluate('document.activeElement.dataset.part')).toBe('unit');
    await row.getByLabel('Unit').selectOption('mm');
    expect((await saved(page)).fields).toEqual({
      MRD1: { kind: 'measurement', measure: 'mrd1', side: 'left', unit: 'mm' },
    });
    await page.context().close();
  });

  it('saves a mapping that converts, once what no export tells is written in', async () => {
    const { page } = await openPage(browser, toReview(table, { values: true }).html);
    for (const name of ['exam no', 'Patient', 'day', 'MRD1 R', 'Ptosis R', 'Kommentar']) {
      await box(page, name).getByLabel('As proposed').check();
    }
    await box(page, 'Ptosis R').getByLabel('odd').selectOption('suspected');
    const other = box(page, 'onclick');
    await other.getByLabel('Something else').check();
    await other.getByLabel('What it is').fill('note');
    const single = page.locator('fieldset', {
      has: page.locator('legend bdi', { hasText: /^MRD1$/ }),
    });
    await single.getByLabel('Keep as text').check();
    const mapping = await saved(page);
    expect(mapping).toMatchObject({
      exam: {
        id: { from: ['exam no'] },
        subject: { identifiers: [{ from: 'Patient' }] },
        performed: { start: 'day' },
      },
      text: ['MRD1'],
      fields: {
        'MRD1 R (mm)': { kind: 'measurement', measure: 'mrd1', side: 'right', unit: 'mm' },
        'Ptosis R': { side: 'right', words: { yes: 'present', odd: 'suspected' } },
        '<b onclick="x">odd</b>': { kind: 'note' },
      },
    });
    const exam = {
      id: { prefix: 'harbour', from: ['exam no'] },
      status: { value: 'final' },
      subject: { identifiers: [{ from: 'Patient', system: 'https://harbour.example/workers' }] },
      performed: { start: 'day' },
      recorded: { value: '2025-01-15T08:00:00Z' },
      examiner: { fixed: { name: 'Harbour surgery' } },
      protocol: { id: 'full', version: '1.0.0' },
    };
    // As a person would write it into the file.
    const whole = { ...mapping, exam, dates: { zone: 'Europe/Lisbon' } } as never;
    const { exams, issues } = fromCsv(table, whole);
    expect(issues).toEqual([]);
    expect(exams.map(({ exam: { id } }) => id)).toEqual(['harbour.E1', 'harbour.E2']);
    await page.context().close();
  });

  it('makes items of a table of items', async () => {
    const { page } = await openPage(browser, toReview(long).html);
    for (const name of ['exam id', 'item', 'side', 'value', 'unit', 'MRD1', 'septum']) {
      const row = page.locator('fieldset', {
        has: page.locator('legend bdi', { hasText: new RegExp(`^${name}$`) }),
      });
      await row.getByLabel('As proposed').check();
    }
    expect((await saved(page)).items).toEqual([
      {
        ...{ code: ['item'], value: 'value', side: 'side', unit: 'unit' },
        map: {
          MRD1: { kind: 'measurement', measure: 'mrd1' },
          septum: { kind: 'region-state', region: 'septum', words: { normal: 'normal' } },
        },
      },
    ]);
    await page.context().close();
  });

  it('works by keyboard alone', async () => {
    const { page } = await openPage(browser, toReview(table).html);
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('#count').textContent()).toBe('1 of 9 decided');
    await page.locator('#save').focus();
    const download = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    expect(JSON.parse(readFileSync(await (await download).path(), 'utf8')).exam.id).toEqual({
      from: ['exam no'],
    });
    await page.context().close();
  });
});
