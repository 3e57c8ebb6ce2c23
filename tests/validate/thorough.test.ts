import { describe, expect, test } from 'vitest';
import { thoroughR4, thoroughR5 } from '../../src/validate/thorough/thorough.ts';
import { validateBundle as validateR4 } from '../../src/validate/versions/r4.ts';
import { validateBundle as validateR5 } from '../../src/validate/versions/r5.ts';
import { changed, example } from './example.ts';

const thorough = { level: 'thorough', engine: thoroughR4 } as const;

describe('the thorough level', () => {
  test.each(['Observation-abdo-tender', 'DiagnosticReport-ultrasound', 'Bundle-lipids'])(
    'finds nothing more in the published %s',
    (name) => {
      expect(validateR4(example(name), thorough)).toEqual(validateR4(example(name)));
    },
  );

  test('says once what an invariant of ours and its published expression both find', () => {
    const resource = changed(example('Observation-abdo-tender'), ['dataAbsentReason'], {
      text: 'not asked',
    });
    const { issues } = validateR4(resource, thorough);
    // https://hl7.org/fhir/R4/observation.html#invs, obs-6
    expect(issues.filter(({ rule }) => rule === 'obs-6').length).toBe(1);
    expect(issues).toEqual(validateR4(resource).issues);
  });

  test('leaves what fhirpath cannot evaluate to the function that can', () => {
    const mm = { unit: 'mm', system: 'http://unitsofmeasure.org', code: 'mm' };
    const range = { low: { value: 1, ...mm }, high: { value: 2, ...mm } };
    const observation = {
      resourceType: 'Observation',
      text: { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">1 mm</div>' },
      status: 'final',
      code: { text: 'Width' },
      component: [
        { code: { text: 'Upper' }, valueRange: range },
        { code: { text: 'Lower' }, valueRange: range },
      ],
    };
    // fhirpath has boundaries of decimals and dates, and rng-2 of R5 asks for those of a Quantity: the
    // verdict is that of our function.
    const found = validateR5(observation, { level: 'thorough', engine: thoroughR5 });
    expect(found).toMatchObject({ conformance: 'conforms', issues: [] });
  });

  test('needs an engine of its FHIR version', () => {
    const resource = example('Observation-abdo-tender');
    expect(() => validateR4(resource, { level: 'thorough' })).toThrow(
      new TypeError('cannot validate thoroughly: expected an engine of FHIR R4, got none'),
    );
    expect(() => validateR4(resource, { level: 'thorough', engine: thoroughR5 })).toThrow(
      new TypeError('cannot validate thoroughly: expected an engine of FHIR R4, got R5'),
    );
  });

  test('has no other name', () => {
    // As from plain JavaScript.
    const options = { level: 'Thorough' } as unknown as Parameters<typeof validateR4>[1];
    expect(() => validateR4({}, options)).toThrow(
      new TypeError('cannot validate at level Thorough: expected fast or thorough'),
    );
  });

  test('is not there unless it is asked for', () => {
    expect(validateR4(example('Bundle-lipids'), { engine: thoroughR4 })).toEqual(
      validateR4(example('Bundle-lipids'), { level: 'fast' }),
    );
  });

  test.each([[null], [5], [[]], [{}], [{ resourceType: 'Observation', status: 7, component: {} }]])(
    'takes %j without a throw',
    (value) => {
      expect(validateR4(value, thorough).valid).toBe(false);
    },
  );
});
