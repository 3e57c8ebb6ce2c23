import type { TableName, TableRows } from './built-in.ts';

/** A code that a row names, the table it must stand in, and where in the row it is. */
export type Reference = readonly [
  table: TableName,
  code: string | undefined,
  ...path: readonly (string | number)[],
];

/** What the rows of each table refer to. Tables that are not here refer to nothing. */
export const references: {
  readonly [Name in TableName]?: (row: TableRows[Name]) => readonly Reference[];
} = {
  regions: (row) => [
    ['regions', row.parent, 'parent'],
    ['sections', row.section, 'section'],
    ...all('methods', row.methods, 'methods'),
  ],
  findings: (row) => all('regions', row.regions, 'regions'),
  testPoints: (row) => [
    ['regions', row.region, 'region'],
    ['sections', row.section, 'section'],
    ...all('modalities', row.modalities, 'modalities'),
    ...all('testResults', row.results, 'results'),
  ],
  sensationResults: (row) => all('modalities', row.modalities, 'modalities'),
  modalities: (row) => [['methods', row.method, 'method']],
  measures: (row) => [
    ['regions', row.region, 'region'],
    ['measures', row.rangeOf, 'rangeOf'],
    ['scales', row.scale, 'scale'],
    ['testPoints', row.test, 'test'],
  ],
  scales: (row) => [['regions', row.region, 'region']],
  symptoms: (row) => [['sections', row.section, 'section']],
  negatives: (row) => [
    ['sections', row.section, 'section'],
    ...row.entries.flatMap((entry, e): Reference[] => [
      ['findings', entry.finding, 'entries', e, 'finding'],
      ...all('regions', entry.regions, 'entries', e, 'regions'),
    ]),
    ...(row.comparisons ?? []).flatMap((entry, c): Reference[] => [
      ['testPoints', entry.point, 'comparisons', c, 'point'],
      ...all('modalities', entry.modalities, 'comparisons', c, 'modalities'),
    ]),
    ...(row.tests ?? []).flatMap((entry, t): Reference[] => [
      ['testPoints', entry.test, 'tests', t, 'test'],
      ['testResults', entry.result, 'tests', t, 'result'],
    ]),
  ],
  protocols: (row) => [
    ...row.regions.flatMap((entry, r): Reference[] => [
      ['regions', entry.region, 'regions', r, 'region'],
      ...all('methods', entry.methods, 'regions', r, 'methods'),
    ]),
    ...(row.points ?? []).flatMap((entry, p): Reference[] => [
      ['testPoints', entry.point, 'points', p, 'point'],
      ...all('modalities', entry.modalities, 'points', p, 'modalities'),
    ]),
    ...all('testPoints', row.tests, 'tests'),
    ...all('measures', row.measures, 'measures'),
  ],
};

function all(
  table: TableName,
  codes: readonly string[] | undefined,
  ...path: readonly (string | number)[]
): Reference[] {
  return (codes ?? []).map((code, at) => [table, code, ...path, at]);
}
