import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Exam } from '../../src/index.ts';

const folder = join(import.meta.dirname, '../../examples/exams');

/** The example exams as they are saved, by file name. */
export const savedExamples: readonly (readonly [string, Exam])[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => [file, JSON.parse(readFileSync(join(folder, file), 'utf8'))]);

export function savedExample(name: string): Exam {
  const found = savedExamples.find(([file]) => file === `${name}.json`)?.[1];
  if (found === undefined) throw new Error(`no example ${name}`);
  return found;
}
