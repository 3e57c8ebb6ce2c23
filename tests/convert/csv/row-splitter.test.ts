import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_ROW, type Row, rowSplitter } from '../../../src/convert/csv/row-splitter.ts';
import { sampled } from '../../sampled.ts';

function rowsOf(pieces: readonly string[]): Row[] {
  const splitter = rowSplitter(',');
  return [...pieces.flatMap((piece) => splitter.push(piece)), ...splitter.end()];
}

/** Texts of the marks that a table is made of. */
const table = fc
  .array(fc.constantFrom('a', ',', '"', '""', '\r\n', '\n', '\r', ' ', 'bc'), { maxLength: 60 })
  .map((parts) => parts.join(''));

describe('rowSplitter', () => {
  it('puts every character into one row', () => {
    fc.assert(
      fc.property(table, (text) => {
        expect(
          rowsOf([text])
            .map((row) => row.text)
            .join(''),
        ).toBe(text);
      }),
      { seed: 1, numRuns: sampled(700, 2000) },
    );
  });

  it('does not depend on how the text comes in pieces', () => {
    fc.assert(
      fc.property(table, fc.array(fc.nat(60)), (text, places) => {
        const cuts = [
          0,
          ...places.filter((at) => at <= text.length).sort((a, b) => a - b),
          text.length,
        ];
        const pieces = cuts.slice(1).map((end, at) => text.slice(cuts[at], end));
        expect(rowsOf(pieces)).toEqual(rowsOf([text]));
      }),
      { seed: 2, numRuns: sampled(700, 2000) },
    );
  });

  it('loses one line to a quote that is never closed, however long the text behind it', () => {
    const lines = Math.ceil((LONGEST_ROW * 3) / 4);
    const pieces = [
      '1,"open\n',
      ...Array.from({ length: lines / 1000 }, () => '2,3\n'.repeat(1000)),
    ];
    const rows = rowsOf(pieces);
    expect(rows[0]).toEqual({ text: '1,"open\n', line: 1, fault: 'unclosed-quote' });
    expect(rows.length).toBe((pieces.length - 1) * 1000 + 1);
    expect(rows.filter(({ fault }) => fault !== undefined).length).toBe(1);
  });

  it('cuts a line over the limit, all parts of it at fault, and goes on behind it', () => {
    const rows = rowsOf([`${'x'.repeat(LONGEST_ROW * 2 + 5)},1\n2,3\n`]);
    expect(rows.map(({ text, line, fault }) => [text.length, line, fault])).toEqual([
      [LONGEST_ROW, 1, 'too-large'],
      [LONGEST_ROW, 1, 'too-large'],
      [8, 1, 'too-large'],
      [4, 2, undefined],
    ]);
  });
});
