import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { freeSetSource, publishedFreeSet } from '../../src/generate/terminology/free-set.ts';
import { freeSet } from '../../src/terminology/published/free-set.ts';

const set = await publishedFreeSet();

test('the Global Patient Set is the one of September 2020 with 26,158 ids', () => {
  expect(set.version).toBe('20200930');
  expect(set.ids).toHaveLength(26_158);
  expect([freeSet.version, freeSet.size]).toEqual([set.version, set.ids.length]);
});

test('the look-up holds every id of the published file', () => {
  expect(set.ids.filter((id) => !freeSet.has(id))).toEqual([]);
});

test('the look-up holds no neighbour that the published file does not hold', () => {
  const published = new Set(set.ids);
  const wrong: string[] = [];
  for (const id of set.ids) {
    const item = Number(id.slice(0, -3));
    for (const near of [item - 1, item + 1]) {
      for (let digit = 0; digit < 10; digit++) {
        const other = `${near}${id.slice(-3, -1)}${digit}`;
        if (freeSet.has(other) !== published.has(other)) wrong.push(other);
      }
    }
  }
  expect(wrong).toEqual([]);
});

test('src/terminology/tables/free-set-ids.ts is what the published package gives', async () => {
  const table = new URL('../../src/terminology/tables/free-set-ids.ts', import.meta.url);
  expect(await readFile(table, 'utf8')).toBe(freeSetSource(set));
});
