import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvReader } from '../../../src/convert/csv/reader.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { type Syntax, syntaxOf } from '../messy.ts';

const file = join(import.meta.dirname, '../../cases/csv/mappings/wide.json');

/** The vineyard's mapping, with words for blanks and a side word. */
export const csvMapping: Mapping = {
  ...JSON.parse(readFileSync(file, 'utf8')),
  sides: { L: 'left', R: 'right' },
  noValue: { '': 'not-stated', 'N/A': 'not-stated' },
};

export const csvSyntax: Syntax = syntaxOf(csvMapping, csvReader({ syntax: 'csv' }), false);
