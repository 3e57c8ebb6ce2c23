import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Exam } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { launch } from './chromium.ts';
import { conversionPage } from './conversion-picture.ts';

/** Writes the pictures of the README from the examples, light and dark: `npm run pictures`. */
const root = join(import.meta.dirname, '../..');
const folder = join(root, 'examples/pictures');

function html(name: string): string {
  const text = readFileSync(join(root, 'examples/exams', `${name}.json`), 'utf8');
  const exam: Exam = JSON.parse(text);
  return toHtml(exam);
}

mkdirSync(folder, { recursive: true });
const conversion = conversionPage();
const browser = await launch();
for (const colorScheme of ['light', 'dark'] as const) {
  const context = await browser.newContext({ viewport: { width: 800, height: 640 }, colorScheme });
  const page = await context.newPage();
  await page.setContent(html('skin-lesion'));
  await page.screenshot({ path: join(folder, `first-page-${colorScheme}.png`) });
  await page.setContent(html('yearly-check'));
  // What sticks to the top of the screen would lie across the drawing.
  await page.addStyleTag({
    content: '.strip { position: static !important; } .beside { display: none; }',
  });
  await page.setViewportSize({ width: 720, height: 640 });
  await page.locator('.views').screenshot({ path: join(folder, `drawing-${colorScheme}.png`) });
  await page.setContent(conversion);
  await page.setViewportSize({ width: 800, height: 640 });
  await page.locator('main').screenshot({ path: join(folder, `conversion-${colorScheme}.png`) });
  await context.close();
}
await browser.close();
