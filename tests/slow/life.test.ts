import { expect, it } from 'vitest';
import { checkExport } from '../model/life/export.ts';
import { draft, sequences } from '../model/life/sequences.ts';

it('every legal sequence of up to six steps exports a valid bundle and comes back equal', () => {
  let count = 0;
  for (const { outcome } of sequences(draft, 6)) {
    if (outcome.value === undefined) continue;
    checkExport(outcome.value);
    count += 1;
  }
  expect(count).toBeGreaterThan(2000);
});
