import { expect, it } from 'vitest';
import { placesIn } from '../../../src/convert/xml/place.ts';

it('places count lines and columns from the start of the unit', () => {
  const placeOf = placesIn('<exam>\n<a/>\r\n<b/>', { line: 7, column: 3 });
  expect([0, 6, 7, 13].map(placeOf)).toEqual([
    { line: 7, column: 3 },
    { line: 7, column: 9 },
    { line: 8, column: 1 },
    { line: 9, column: 1 },
  ]);
});
