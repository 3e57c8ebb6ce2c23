import { describe, expect, it } from 'vitest';
import { pathFromPointer, pathPointer, pathText } from '../../src/issues/path.ts';

describe('JSON Pointer', () => {
  // The examples of RFC 6901 section 5 that a path of names and indexes can say.
  it.each([
    ['', []],
    ['/foo', ['foo']],
    ['/foo/0', ['foo', 0]],
    ['/', ['']],
    ['/a~1b', ['a/b']],
    ['/c%d', ['c%d']],
    ['/e^f', ['e^f']],
    ['/g|h', ['g|h']],
    ['/i\\j', ['i\\j']],
    ['/k"l', ['k"l']],
    ['/ ', [' ']],
    ['/m~0n', ['m~n']],
  ])('%j', (pointer, path) => {
    expect(pathFromPointer(pointer)).toEqual(path);
    expect(pathPointer(path)).toBe(pointer);
  });

  it('unescapes ~01 to ~1 and not to /, as section 4 says', () => {
    expect(pathFromPointer('/~01')).toEqual(['~1']);
    expect(pathPointer(['~1'])).toBe('/~01');
  });

  it('leading zeros make no index', () => {
    expect(pathFromPointer('/01/10')).toEqual(['01', 10]);
  });
});

it.each([
  [[], ''],
  [['entry', 3, 'resource', 'status'], 'entry[3].resource.status'],
  [[0, 'a'], '[0].a'],
  [['a', 0, 1], 'a[0][1]'],
])('%j as text is %j', (path, text) => {
  expect(pathText(path)).toBe(text);
});
