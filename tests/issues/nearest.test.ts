import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/issues/nearest.ts';

describe('the nearest known name', () => {
  it.each([
    ['statment', ['status', 'statements', 'statement'], 'statement'],
    ['Side', ['side', 'site'], 'side'],
    ['fhri', ['format', 'fhir'], 'fhir'],
    ['exprot', ['report', 'export'], 'export'],
    ['ab', ['ac'], 'ac'],
    // kitten to sitting are three letters apart, more than a third of six.
    ['kitten', ['sitting'], undefined],
    ['', ['a'], 'a'],
    ['x', [], undefined],
  ])('of %j in %j is %j', (name, known, expected) => {
    expect(nearest(name, known)).toBe(expected);
  });

  it('the first of several that are equally near', () => {
    expect(nearest('bat', ['cat', 'hat'])).toBe('cat');
  });

  it('none for a very long name', () => {
    expect(nearest('a'.repeat(61), ['a'.repeat(61)])).toBeUndefined();
  });
});
