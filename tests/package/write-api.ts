/**
 * Writes the snapshot of the public names. Run after a build: npx tsx tests/package/write-api.ts
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { apiText } from './api.ts';

writeFileSync(join(import.meta.dirname, 'api.txt'), apiText());
