import { expect, it } from 'vitest';
import { lineSplitter } from '../../../src/convert/bulk/input/line-splitter.ts';

const text = 'one\r\n\ntwo\n \nthree';

it.each([1, 2, 5, 100])('cuts lines and counts blank ones (pieces of %i)', (size) => {
  const splitter = lineSplitter();
  const lines = [];
  for (let at = 0; at < text.length; at += size) {
    lines.push(...splitter.push(text.slice(at, at + size)));
  }
  lines.push(...splitter.end());
  expect(lines).toEqual([
    { text: 'one', number: 1 },
    { text: 'two', number: 3 },
    { text: 'three', number: 5 },
  ]);
});

it('cuts a line over the limit, and goes on behind it', () => {
  const splitter = lineSplitter(10);
  const lines = [...splitter.push('a'.repeat(8)), ...splitter.push(`${'a'.repeat(5000)}\nnext\n`)];
  expect(lines).toEqual([
    { text: 'a'.repeat(11), number: 1, cut: true },
    { text: 'next', number: 2 },
  ]);
});
