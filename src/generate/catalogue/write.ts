/**
 * Writes the page of all codes to output/catalogue.html.
 * Run: npm run catalogue
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { cataloguePage } from './page.ts';

const folder = new URL('../../../output/', import.meta.url);
mkdirSync(folder, { recursive: true });
const file = new URL('catalogue.html', folder);
writeFileSync(file, cataloguePage());
console.log(`wrote ${file.pathname}`);
