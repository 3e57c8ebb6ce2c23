import { describe, expect, test } from 'vitest';
import { validateBundle as validateR4 } from '../../../src/validate/versions/r4.ts';
import { changed, example } from '../example.ts';
import { text } from './expected.ts';

test('a resource whose definition is not held gives a warning, and its own elements are not looked into', () => {
  const bundle = {
    resourceType: 'Bundle',
    type: 'collection',
    entry: [
      {
        fullUrl: 'https://clinic.example/fhir/Condition/a',
        resource: { resourceType: 'Condition', id: 'a', text, nonsense: 1 },
      },
    ],
  };
  expect(validateR4(bundle)).toMatchObject({
    conformance: 'not-fully-checked',
    valid: false,
    unchecked: [{ rule: 'Condition', path: ['entry', 0, 'resource'] }],
    issues: [
      {
        code: 'unchecked-resource',
        severity: 'warning',
        message: 'a resource of type Condition is not checked, because its schema is not held here',
        path: ['entry', 0, 'resource'],
      },
    ],
  });
});

describe('values', () => {
  const resource = changed(
    example('Observation-abdo-tender'),
    ['effectiveDateTime'],
    'on her birthday',
  );

  test('are in no issue unless asked for', () => {
    expect(JSON.stringify(validateR4(resource))).not.toContain('birthday');
  });

  test('stand in received when asked for', () => {
    const { issues } = validateR4(resource, { includeValues: true });
    expect(issues.map(({ received }) => received)).toEqual(['on her birthday']);
  });
});

test.each([undefined, null, 5, 'text', [], true, () => 1, Symbol('x'), 5n])(
  '%s is no resource',
  (value) => {
    expect(validateR4(value)).toMatchObject({
      valid: false,
      issues: [{ code: 'wrong-type', path: [] }],
    });
  },
);

test('a fault in each of 20,000 entries gives the first thousand, and a count', () => {
  const resource = changed(example('Observation-vomiting'), ['status'], 'x');
  const entry = Array.from({ length: 20_000 }, (_, at) => ({
    fullUrl: `https://clinic.example/observations/number-${at}`,
    resource,
  }));
  const { issues } = validateR4({ resourceType: 'Bundle', type: 'collection', entry });
  expect(issues.length).toBe(1001);
  expect(issues.at(-2)?.path).toEqual(['entry', 999, 'resource', 'status']);
  expect(issues.at(-1)).toMatchObject({ code: 'issues-cut', severity: 'error' });
});
