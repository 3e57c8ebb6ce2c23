import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * What went wrong when exports that nobody had seen were converted, in our own words, and the test that
 * holds each. A test that is renamed or taken away fails here, so that no defect comes back unseen.
 */
const held: readonly (readonly [defect: string, file: string, test: string])[] = [
  [
    'a value took the side of another element of the same name',
    'partners.test.ts',
    'keeps the side of its own element',
  ],
  [
    'a value took the unit of another element of the same name',
    'partners.test.ts',
    'keeps the unit of its own element',
  ],
  [
    'another number of the person was written as the number of the clinic',
    'partners.test.ts',
    'has no number of another name space',
  ],
  [
    'of two sides beside one value the second was lost',
    'partners.test.ts',
    'are both told of a C-CDA entry with two sites',
  ],
  ['two phones, races, names or providers set an exam aside', 'repetitions.test.ts', 'two phones'],
  [
    'no exam id could be made of person and date',
    'presets/c-cda-header.test.ts',
    'an exam id from person and date',
  ],
  [
    'a second given or family name set a document aside',
    'partners.test.ts',
    'with a second given name has both',
  ],
  [
    'what a header says of the person ended in clinical notes',
    'presets/c-cda-entries.test.ts',
    'leaves who took part to the ledger',
  ],
  ['"R 4 mm L 2 mm" in a cell stayed text', 'cells/cells.test.ts', 'splits two sides'],
  ['"scar, naevus" in a cell stayed text', 'cells/cells.test.ts', 'splits a list'],
  [
    'merged cells, titles and a line sep= set rows aside',
    'cells/cells.test.ts',
    'fills merged cells down',
  ],
  ['a cell such as ="00123" was no number', 'cells/cells.test.ts', 'as the text 00123'],
  [
    'a meaning had to be written for each side',
    'cells/cells.test.ts',
    'say once what holds for both sides',
  ],
  [
    'sections that are narrative alone became one note of everything',
    'narrative/cut.test.ts',
    'from the narrative of a section of a C-CDA document',
  ],
  [
    'fewer than half of the columns of a table were proposed, some wrongly',
    'suggest/tables.test.ts',
    'and none on a wrong side, unit or denial',
  ],
  [
    'a code that its own words contradict was coded',
    'contradictions.test.ts',
    'a code against its own words',
  ],
  [
    'a value beside a nullFlavor was coded',
    'contradictions.test.ts',
    'a nullFlavor beside a value',
  ],
  ['a line break glued two words of XML together', 'contradictions.test.ts', 'parts words in XML'],
  [
    'a file as folder of the results was told as a fault of ours',
    '../cli/convert/convert.test.ts',
    'says in one line that its output can not stand there',
  ],
  [
    'a disk that is read-only was told as a missing folder',
    '../cli/output/disks.test.ts',
    'read-only',
  ],
  [
    'a record dated to the day was set aside without a word of the cure',
    'presets/c-cda-header.test.ts',
    'tells the cure for a date alone',
  ],
  [
    'nothing showed what an export holds before it was mapped',
    'scan/scan.test.ts',
    'holds no value unless that is asked',
  ],
  [
    'a changed export was not seen beside its mapping',
    'scan/misfits.test.ts',
    'tells a column that is gone',
  ],
  [
    'nothing showed a result beside its source, or a change of a mapping',
    '../report/dry-run/dry-run.test.ts',
    'difference of two mappings',
  ],
  [
    'a mapping could not be tested by what it carries',
    'mapping-tests/mapping-tests.test.ts',
    'tests that a mapping carries',
  ],
  ['JSON was read as a table of one column', 'json/json.test.ts', 'is seen by its beginning'],
];

describe('defects of earlier conversions', () => {
  it.each(held)('%s: %s', (_, file, test) => {
    expect(readFileSync(join(import.meta.dirname, file), 'utf8').includes(test)).toBe(true);
  });

  it('are each told once', () => {
    expect(new Set(held.map(([defect]) => defect)).size).toBe(held.length);
  });
});
