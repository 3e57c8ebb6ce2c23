import { expect, it } from 'vitest';
import { seenIds } from '../../../src/convert/bulk/seen-ids.ts';
import { sampled } from '../../sampled.ts';

it('knows every id once, however many there are, and again after a stop', () => {
  const seen = seenIds();
  const ids = Array.from({ length: sampled(10_000, 50_000) }, (_, at) => `harbour.${at}`);
  expect(ids.every((id) => seen.add(id))).toBe(true);
  expect(ids.some((id) => seen.add(id))).toBe(false);
  expect(seen.size()).toBe(ids.length);
  const bytes = seen.takeNew();
  expect(bytes.length).toBe(ids.length * 8);
  expect(seen.takeNew().length).toBe(0);

  const again = seenIds(bytes);
  expect(again.size()).toBe(ids.length);
  expect(ids.some((id) => again.add(id))).toBe(false);
  expect(again.add('harbour.new')).toBe(true);
  expect(again.takeNew().length).toBe(8);
});
