/**
 * Writes each example exam as JSON beside its program.
 * Run: npx tsx examples/write-json.ts
 */
import { writeFileSync } from 'node:fs';
import { toJson } from '../src/index.ts';
import { examples } from './all-exams.ts';

for (const [name, exam] of examples) {
  const target = new URL(`exams/${name}.json`, import.meta.url);
  writeFileSync(target, `${toJson(exam, { pretty: true })}\n`);
}
