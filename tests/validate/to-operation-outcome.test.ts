import { readFileSync } from 'node:fs';
import fhirpath from 'fhirpath';
import model from 'fhirpath/fhir-context/r4';
import { describe, expect, test } from 'vitest';
import { issueTypes } from '../../src/issues/codes.ts';
import { issue } from '../../src/issues/issue.ts';
import { type Path, pathText } from '../../src/issues/path.ts';
import { fhirPathText } from '../../src/validate/invariants/fhirpath.ts';
import { toOperationOutcome } from '../../src/validate/to-operation-outcome.ts';
import * as r4 from '../../src/validate/versions/r4.ts';
import * as r4b from '../../src/validate/versions/r4b.ts';
import * as r5 from '../../src/validate/versions/r5.ts';
import { changed, example } from './example.ts';

test('an issue with all its parts', () => {
  const found = issue(
    'invalid-value',
    ['entry', 3, 'resource', 'valueQuantity', 'value'],
    { reason: 'form', form: 'number' },
    {
      received: '4\u00000',
      rule: 'obs-1',
      source: { file: 'a.csv', line: 3, column: 2 },
    },
  );
  expect(toOperationOutcome([found])).toEqual({
    resourceType: 'OperationOutcome',
    issue: [
      {
        severity: 'error',
        code: 'value',
        details: {
          coding: [
            {
              system: 'https://face-neck-fhir.example/fhir/CodeSystem/issue-code',
              code: 'invalid-value',
            },
          ],
          text: 'the value does not have the required form',
        },
        diagnostics: 'expected a number; received 4\uFFFD0; at a.csv, line 3, column 2; rule obs-1',
        expression: ['entry[3].resource.value.ofType(Quantity).value'],
      },
    ],
  });
});

test('no issues say so', () => {
  expect(toOperationOutcome([]).issue).toEqual([
    { severity: 'information', code: 'informational', details: { text: 'no issues found' } },
  ]);
});

const faulty = changed(
  changed(example('Bundle-lipids'), ['entry', 1, 'resource', 'status'], 'x'),
  ['entry', 2, 'resource', 'odd name`'],
  1,
);

test.each([
  ['R4', r4],
  ['R4B', r4b],
  ['R5', r5],
])('the resource is valid in %s', (_version, { validateBundle }) => {
  const { issues } = validateBundle(faulty, { includeValues: true });
  expect(issues.length).toBe(2);
  for (const outcome of [toOperationOutcome(issues), toOperationOutcome([])]) {
    const found = validateBundle(outcome);
    expect(found.valid).toBe(true);
    // It has no narrative, which is a recommendation.
    expect(found.issues.map(({ rule }) => rule)).toEqual(['dom-6']);
  }
});

test('every type is in the required list of HL7', () => {
  // The list as HL7's R4 JSON schema gives it; tests/published compares it with the code system.
  const file = new URL('../../profiles/json-schema/fhir-r4.json', import.meta.url);
  const schema = JSON.parse(readFileSync(file, 'utf8'));
  const codes: string[] = schema.definitions.OperationOutcome_Issue.properties.code.enum;
  expect(codes.length).toBe(31);
  expect(Object.values(issueTypes).filter((type) => !codes.includes(type))).toEqual([]);
});

describe('an expression finds the element, by the FHIRPath engine of NLM', () => {
  const base = changed(example('Observation-blood-pressure-dar'), ['effectiveDateTime'], undefined);
  const bundle = {
    resourceType: 'Bundle',
    entry: [
      { resource: { ...base, valueString: 'three', effectivePeriod: { start: '2024' } } },
      {
        resource: {
          ...base,
          valueQuantity: { value: 3 },
          _status: { extension: [{ url: 'https://clinic.example/why', valueCode: 'a' }] },
          'odd name': 7,
        },
      },
    ],
  };

  const places: readonly (readonly [path: Path, value: string | number])[] = [
    [['entry', 0, 'resource', 'component', 1, 'code', 'coding', 0, 'code'], '8462-4'],
    [['entry', 0, 'resource', 'valueString'], 'three'],
    [['entry', 0, 'resource', 'effectivePeriod', 'start'], '2024'],
    [['entry', 1, 'resource', 'valueQuantity', 'value'], 3],
    [['entry', 1, 'resource', '_status', 'extension', 0, 'valueCode'], 'a'],
    [['entry', 1, 'resource', 'odd name'], 7],
  ];

  for (const [path, value] of places) {
    test(pathText(path), () => {
      const found = fhirpath.evaluate(bundle, fhirPathText(path), {}, model, { async: false });
      expect(JSON.stringify(found)).toBe(JSON.stringify([value]));
    });
  }

  test('a name that only looks like a choice stays as it is', () => {
    expect(fhirPathText(['property', 0, 'valueQuantity', 0])).toBe('property[0].valueQuantity[0]');
    expect(fhirPathText(['valueless'])).toBe('valueless');
    expect(fhirPathText(['a`b\\c'])).toBe('`a\\`b\\\\c`');
  });
});
