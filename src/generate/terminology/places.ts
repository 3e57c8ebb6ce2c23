import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { exportedCodes } from '../../terminology/exported-codes.ts';

/**
 * Writes profiles/views/places.csv: every code of a body site with its region and side apart, for
 * those who join it to the views.
 * Run: npx tsx src/generate/terminology/places.ts
 */
const target = fileURLToPath(new URL('../../../profiles/views/places.csv', import.meta.url));

/** No code holds a comma; a display can. */
export function placesCsv(): string {
  const places = exportedCodes(builtInCatalogue, 'regions');
  const lines = places.map(({ code, row, side = '' }) => {
    const display = builtInCatalogue.regions.get(row)?.display ?? row;
    return `${code},${row},${side},"${display.replaceAll('"', '""')}"\n`;
  });
  return `place,region,side,region_display\n${lines.join('')}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(target, placesCsv());
