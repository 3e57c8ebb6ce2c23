import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { auditHtml, createAuditor } from '../../src/audit/index.ts';
import {
  englishLetterWords,
  germanLetterWords,
  type LetterReader,
  letterHtml,
  toLetter,
} from '../../src/letters/index.ts';
import { germanWords } from '../../src/report/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { savedExamples } from '../report/saved-examples.ts';
import { launch } from './chromium.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const pictures = join(import.meta.dirname, '../../output/screenshots');
const readers: readonly LetterReader[] = [
  'specialist',
  'general-practitioner',
  'patient',
  'employer',
];

let browser: Browser;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  browser = await launch();
});
afterAll(() => browser.close());

async function looked(html: string, dark: boolean): Promise<readonly [string[], number]> {
  const context = await browser.newContext({
    viewport: { width: 320, height: 700 },
    colorScheme: dark ? 'dark' : 'light',
    bypassCSP: true,
  });
  const page = await context.newPage();
  await page.setContent(html);
  await page.evaluate(axe);
  const found = await page.evaluate(
    "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ' ' + nodes[0].html.slice(0, 120)))",
  );
  const wide = await page.evaluate('document.documentElement.scrollWidth');
  await context.close();
  return [found as string[], wide as number]; // made of strings, and a number, by the lines above
}

async function printed(html: string, name: string): Promise<string[]> {
  const page = await browser.newPage();
  await page.setContent(html);
  const path = join(pictures, `${name}.pdf`);
  await page.pdf({ preferCSSPageSize: true, path });
  await page.close();
  const text = execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' });
  return text.split('\f').slice(0, -1);
}

const bare = (text: string): string => text.replaceAll(/[\s\u00ad\u2010-]/g, '');

describe.each(savedExamples)('letters of %s in Chromium', (file, exam) => {
  it.each(readers)('%s: no axe violation, light and dark, and 320 px are enough', async (to) => {
    const { value } = toLetter(exam, to);
    if (value === undefined) throw new Error('no letter');
    for (const dark of [false, true]) {
      expect(await looked(letterHtml(value), dark)).toEqual([[], 320]);
    }
  });

  it.each([
    ['en', {}, englishLetterWords],
    [
      'de',
      { language: german, words: germanWords, letterWords: germanLetterWords },
      germanLetterWords,
    ],
  ] as const)(
    'print in %s with head and number on each page, and every sentence',
    async (tag, options, words) => {
      for (const to of readers) {
        const { value } = toLetter(exam, to, options);
        if (value === undefined) throw new Error('no letter');
        const pages = await printed(letterHtml(value, words), `letter-${file}-${to}-${tag}`);
        for (const [at, page] of pages.entries()) {
          expect(bare(page)).toContain(bare(value.running));
          const { page: word, of } = words.pageNumber;
          expect(page).toContain(`${word} ${at + 1} ${of} ${pages.length}`);
        }
        const whole = bare(pages.join(''));
        const sentences = value.sections.flatMap((section) => section.sentences);
        expect(sentences.filter(({ text }) => !whole.includes(bare(text)))).toEqual([]);
      }
    },
  );
});

describe('the page of an audit in Chromium', () => {
  it('has no axe violation, light and dark, and 320 px are enough', async () => {
    const auditor = createAuditor();
    for (const [, exam] of savedExamples) auditor.add(exam);
    const html = auditHtml(auditor.result());
    for (const dark of [false, true]) expect(await looked(html, dark)).toEqual([[], 320]);
  });
});
