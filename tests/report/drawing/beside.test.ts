import { describe, expect, it } from 'vitest';
import type { Statement } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { emptyExam } from '../empty-exam.ts';
import { parsePage } from '../reading/parsed-page.ts';
import { parseDrawing } from './parsed-drawing.ts';

/** Regions that no view shows. */
const jaw = { region: 'jaw', methods: ['palpation'] } as const;
const statements: Statement[] = [
  { key: 'jaw', kind: 'region-state', state: 'normal', ...jaw },
  { key: 'neck', kind: 'region-state', state: 'normal', ...jaw, region: 'neck' },
  {
    key: 'thyroid',
    kind: 'region-state',
    state: 'not-examined',
    region: 'thyroid',
    reason: { code: 'time' },
  },
  { key: 'swallow', kind: 'region-state', state: 'abnormal', ...jaw, region: 'swallow' },
  {
    key: 'unknown',
    kind: 'region-state',
    state: 'abnormal',
    region: 'no-such-region',
    methods: ['inspection'],
  },
];
const htmlOf = (...all: Statement[]): string => toHtml({ ...emptyExam('full'), statements: all });

describe('beside the views', () => {
  it('what no view shows is told by its mark, in glyph and words, and by number where it is abnormal', () => {
    const { beside } = parseDrawing(htmlOf(...statements));
    expect(beside).toEqual([
      '2 Swallowing',
      '1 No place is named',
      '✓ Examined, no abnormality found: Jaw; Neck',
      '× Not examined, with a reason: Thyroid',
    ]);
  });

  it('is nothing where nothing was said of such a place', () => {
    const shown: Statement = {
      key: 'brow',
      kind: 'region-state',
      state: 'normal',
      region: 'forehead',
      side: 'both',
      methods: ['inspection'],
    };
    expect(parseDrawing(htmlOf(shown)).beside).toEqual([]);
  });

  it('the legend has each mark once, with glyph and words, and says what scale and numbers mean', () => {
    const { legend, glyphs } = parseDrawing(htmlOf());
    expect([...glyphs]).toEqual([
      ['numbered', '1'],
      ['normal', '✓'],
      ['partial', '½'],
      ['not-examined', '×'],
      ['said', '·'],
      ['silent', ''],
    ]);
    expect(legend).toEqual([
      'A sign is present',
      'Examined, no abnormality found',
      'Examined in part',
      'Not examined, with a reason',
      'Something was said, the region as a whole was not judged',
      'Nothing was said: not normal by silence',
      'A number stands in the middle of its region, not at the exact spot. A measured lesion is drawn to scale for an adult face.',
    ]);
  });
});

describe('the table of regions', () => {
  it('passes "not examined" down to parts, each on the sides that it has', () => {
    const thyroid = statements.filter(({ key }) => key === 'thyroid');
    const rows = parsePage(htmlOf(...thyroid)).sections.get('map')?.rows ?? [];
    const left = '× Not examined, with a reason';
    const found = rows.filter((cells) => cells.includes(left));
    expect(found).toEqual([
      ['Lobe of the thyroid', left, left, ''],
      ['Isthmus of the thyroid and pyramidal lobe', '', '', left],
    ]);
  });

  it('has a row for each that is not a group of others, and says silence where a side could be', () => {
    const map = parsePage(htmlOf()).sections.get('map');
    const silence = '? Nothing was said: not normal by silence';
    const sides = {
      paired: [silence, silence, ''],
      crossing: [silence, silence, silence],
      midline: ['', '', silence],
      whole: ['', '', silence],
    };
    const regions = [...builtInCatalogue.regions.values()].filter(({ group }) => !group);
    expect(regions.length).toBeGreaterThan(80);
    expect(map?.head).toEqual(['Where', 'Right', 'Left', 'No side']);
    expect(map?.rows.map(([, ...cells]) => cells)).toEqual(
      regions.map(({ laterality }) => sides[laterality]),
    );
  });

  it('also says what was said of a side that a region does not have', () => {
    const odd: Statement = {
      key: 'odd',
      kind: 'region-state',
      state: 'normal',
      region: 'glabella',
      side: 'left',
      methods: ['inspection'],
    };
    const name = builtInCatalogue.regions.get('glabella')?.display;
    const rows = parsePage(htmlOf(odd)).sections.get('map')?.rows ?? [];
    expect(rows.find(([first]) => first === name)?.[2]).toBe('✓ Examined, no abnormality found');
  });
});
