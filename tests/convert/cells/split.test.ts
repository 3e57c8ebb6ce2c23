import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternSteps, pick } from '../../../src/convert/cells/pick.ts';
import { type Part, splitList, splitSides } from '../../../src/convert/cells/split.ts';
import type { SplitList, SplitSides } from '../../../src/convert/mapping/cells.ts';

const sides: SplitSides = {
  do: 'split-sides',
  from: 'mrd1',
  words: {
    right: ['R', 'RE', 'OD', 'right'],
    left: ['L', 'LE', 'OS', 'left'],
    both: ['BE', 'both'],
  },
  into: { right: 'r', left: 'l', both: 'b' },
};
const list: SplitList = { do: 'split-list', from: 'signs', at: ',', into: 'sign' };

function told(text: string, parts: readonly Part[] | undefined): object | undefined {
  return parts?.map(({ name, start, end }) => [name, text.slice(start, end)]);
}

/** How two sides stand in one cell: common practice, no source. */
describe('a cell of two sides', () => {
  it.each<[string, [string, string][] | undefined]>([
    [
      'R 4 mm L 2 mm',
      [
        ['r', '4 mm'],
        ['l', '2 mm'],
      ],
    ],
    [
      'R+ L-',
      [
        ['r', '+'],
        ['l', '-'],
      ],
    ],
    [
      'R 4mm L 2mm',
      [
        ['r', '4mm'],
        ['l', '2mm'],
      ],
    ],
    [
      'L normal R normal',
      [
        ['l', 'normal'],
        ['r', 'normal'],
      ],
    ],
    [
      'RE: normal; LE: small scar',
      [
        ['r', 'normal'],
        ['l', 'small scar'],
      ],
    ],
    [
      'right: 4, left: 2',
      [
        ['r', '4'],
        ['l', '2'],
      ],
    ],
    [
      'BE: normal, LE scar',
      [
        ['b', 'normal'],
        ['l', 'scar'],
      ],
    ],
    [
      'OD = 4,5 / OS = 3',
      [
        ['r', '4,5'],
        ['l', '3'],
      ],
    ],
    ['R 4 mm', [['r', '4 mm']]],
    // Whose is it? Each stays whole.
    ['4 mm', undefined],
    ['4 mm R, 2 mm L', undefined],
    ['R scar left of the nose', undefined],
    ['right cheek swollen left normal', undefined],
    ['R normal L', undefined],
    ['R 4 R 2', undefined],
    ['R scar on the lid L normal', undefined],
    ['R/L 4', undefined],
    ['r 4 l 2', undefined],
  ])('%s', (text, parts) => {
    expect(told(text, splitSides(text, sides))).toEqual(parts);
  });
});

describe('a list in a cell', () => {
  it.each<[string, [string, string][] | undefined]>([
    [
      'scar, naevus',
      [
        ['sign', 'scar'],
        ['sign', 'naevus'],
      ],
    ],
    ['scar', [['sign', 'scar']]],
    [
      'scar,, naevus,',
      [
        ['sign', 'scar'],
        ['sign', 'naevus'],
      ],
    ],
    [
      'no scar, no naevus',
      [
        ['sign', 'no scar'],
        ['sign', 'no naevus'],
      ],
    ],
    // Whether the first word denies the second as well is not told.
    ['no scar, naevus', undefined],
    ['kein Naevus, Narbe', undefined],
    [' , ', undefined],
  ])('%s', (text, parts) => {
    expect(told(text, splitList(text, list))).toEqual(parts);
  });
});

describe('parts by a pattern', () => {
  it.each<[string, string, [string, string][] | undefined]>([
    [
      'MRD1 {a:number} mm, fissure {b:number} mm',
      'MRD1 4 mm, fissure  9.5 mm',
      [
        ['a', '4'],
        ['b', '9.5'],
      ],
    ],
    [
      '{a:word}: {b:text}',
      'scar: on the left cheek',
      [
        ['a', 'scar'],
        ['b', 'on the left cheek'],
      ],
    ],
    [
      '{a:text}; {b:text}',
      'one; two; three',
      [
        ['a', 'one'],
        ['b', 'two; three'],
      ],
    ],
    ['MRD1 {a:number} mm', 'MRD1 4 cm', undefined],
    ['MRD1 {a:number} mm', 'MRD1 4 mm or so', undefined],
    ['MRD1 {a:number}', 'MRD1 about 4', undefined],
  ])('%s of %s', (pattern, text, parts) => {
    expect(told(text, pick(text, patternSteps(pattern) ?? []))).toEqual(parts);
  });

  it.each(['{a:number}{b:word}', 'no holder', '{a:regex}', '{a:text', '(a+)+$'])(
    'refuses the pattern %s',
    (pattern) => {
      expect(patternSteps(pattern)).toBeUndefined();
    },
  );
});

/** A patient's own words with the words and marks of the operations strewn in. */
const words = fc
  .array(
    fc.constantFrom(
      'R',
      'L',
      'RE',
      'left',
      'right',
      'both',
      '4',
      'mm',
      'scar',
      'no',
      ':',
      ';',
      ',',
      ' ',
      '/',
      '-',
      '+',
      '\n',
    ),
    { maxLength: 14 },
  )
  .map((parts) => parts.join(' ').replace(/ ([:;,])/g, '$1'));

it('every part stands in the text as it was, in order, and only marks and side words lie between', () => {
  const steps = patternSteps('{a:word}: {b:text}') ?? [];
  fc.assert(
    fc.property(words, (text) => {
      for (const parts of [splitSides(text, sides), splitList(text, list), pick(text, steps)]) {
        let from = 0;
        let rest = '';
        for (const { start, end } of parts ?? []) {
          expect(start).toBeGreaterThanOrEqual(from);
          expect(end).toBeGreaterThan(start);
          rest += text.slice(from, start);
          from = end;
        }
        if (parts !== undefined) {
          expect(rest + text.slice(from)).toMatch(/^(?:[\s,;:/|.=]|RE?|LE?|BE|right|left|both)*$/);
        }
      }
    }),
    { seed: 14, numRuns: 2000 },
  );
});

it('a value never goes to the other side, however the sides stand', () => {
  const value = fc.constantFrom('4 mm', '2 mm', '+', '-', 'normal', 'scar', '4');
  const mark = fc.constantFrom(': ', ' ', ' = ', '');
  const between = fc.constantFrom(' ', ', ', '; ', ' / ', '\n');
  fc.assert(
    fc.property(value, value, mark, between, fc.boolean(), (one, other, sign, gap, turned) => {
      const [first, second] = turned ? ['L', 'R'] : ['R', 'L'];
      const text = `${first}${sign}${one}${gap}${second}${sign}${other}`;
      const parts = splitSides(text, sides);
      // Without anything between them a side and a word are one word, and the cell stays whole.
      if (parts === undefined) return;
      const names = turned ? ['l', 'r'] : ['r', 'l'];
      expect(told(text, parts)).toEqual([
        [names[0], one],
        [names[1], other],
      ]);
    }),
    { seed: 14, numRuns: 1000 },
  );
});
