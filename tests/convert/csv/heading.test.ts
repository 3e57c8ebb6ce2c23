import { expect, it } from 'vitest';
import { convertText } from '../../../src/convert/exams/convert-text.ts';
import { csvSyntax } from './suite.ts';

it('headings beyond any table are not repeated with every row', () => {
  const heading = Array.from({ length: 20_000 }, (_, at) => `column ${at}`).join(',');
  const text = `${heading}\n${'a,b\n'.repeat(100)}`;
  const { exams, quarantine } = convertText(text, csvSyntax.reader, csvSyntax.plan);
  expect(exams).toEqual([]);
  expect(quarantine.length).toBe(101);
  expect(quarantine[0]).toMatchObject({ reason: 'too-large', raw: `${heading}\n` });
  expect(JSON.stringify(quarantine.slice(1)).length).toBeLessThan(100_000);
});
