import { fromJson, hasErrors, type Issue } from '../../src/index.ts';
import { validateBundle as r4 } from '../../src/validate/versions/r4.ts';
import { validateBundle as r4b } from '../../src/validate/versions/r4b.ts';
import { validateBundle as r5 } from '../../src/validate/versions/r5.ts';
import type { FhirRelease } from './corpus.ts';

const validators = { R4: r4, R4B: r4b, R5: r5 } as const;

/** What this library says of a text: the issues of reading it, and of the bundle where it can be read. */
export function ourIssues(text: string, version: FhirRelease): readonly Issue[] {
  const read = fromJson(text);
  if (hasErrors(read.issues)) return read.issues;
  return [...read.issues, ...validators[version](read.value).issues];
}
