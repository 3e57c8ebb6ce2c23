import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { thoroughR4 } from '../../src/validate/thorough/thorough.ts';
import { compileProfiles, validateBundle } from '../../src/validate/versions/r4.ts';

// What the base says of a place, here as warnings, may never stand for what a profile says of it.

const url = 'https://vineyard.example/StructureDefinition/picker';

function profile(elements: readonly object[], constraint: object[] = []): object {
  return {
    resourceType: 'StructureDefinition',
    url,
    name: 'Picker',
    status: 'draft',
    fhirVersion: '4.0.1',
    kind: 'resource',
    abstract: false,
    type: 'Patient',
    derivation: 'constraint',
    snapshot: {
      element: [{ id: 'Patient', path: 'Patient', min: 0, max: '*', constraint }, ...elements],
    },
  };
}

const narrative = {
  status: 'generated',
  div: '<div xmlns="http://www.w3.org/1999/xhtml">A picker</div>',
};

describe.each(['with', 'without'])('a resource %s narrative', (how) => {
  const patient = {
    resourceType: 'Patient',
    id: 'p',
    meta: { profile: [url] },
    ...(how === 'with' && { text: narrative }),
    maritalStatus: {
      coding: [{ system: 'https://vineyard.example/state', code: 'betrothed', display: 'x' }],
    },
  };

  test.each(['error', 'warning'])('a rule of the profile of severity %s is told', (severity) => {
    const rule = { key: 'own-1', severity, human: 'x', expression: 'birthDate.exists()' };
    const { issues } = validateBundle(patient, {
      profiles: compileProfiles([profile([], [rule])]),
      level: 'thorough',
      engine: thoroughR4,
    });
    expect(
      issues.filter((found) => found.rule === `${url}#own-1`).map((found) => found.severity),
    ).toEqual([severity]);
  });

  test('a required binding to the value set that the base recommends is an error', () => {
    const element = {
      id: 'Patient.maritalStatus',
      path: 'Patient.maritalStatus',
      min: 0,
      max: '1',
      type: [{ code: 'CodeableConcept' }],
      binding: { strength: 'required', valueSet: 'http://hl7.org/fhir/ValueSet/marital-status' },
    };
    const { valid, issues } = validateBundle(patient, {
      profiles: compileProfiles([profile([element])]),
    });
    expect(valid).toBe(false);
    expect(
      issues.filter(({ code }) => code === 'unknown-code').map(({ severity }) => severity),
    ).toContain('error');
  });
});

test('whatever the base says, every rule of a profile that does not hold is told with its severity', () => {
  const names = ['maritalStatus', 'birthDate', 'gender', 'active', 'name', 'telecom', 'contact'];
  const values: Readonly<Record<string, unknown>> = {
    // Each with something that the base has a warning, an error or nothing against.
    maritalStatus: { coding: [{ system: 'https://vineyard.example/state', code: 'betrothed' }] },
    birthDate: '1980-02-30',
    gender: 'picker',
    active: true,
    name: [{}],
    telecom: [{ value: '7' }],
    contact: [{ relationship: [{ text: 'x' }] }],
  };
  const row = fc.record({
    name: fc.constantFrom('', ...names),
    severity: fc.constantFrom('error', 'warning'),
  });
  fc.assert(
    fc.property(
      fc.subarray(names),
      fc.uniqueArray(row, { selector: ({ name }) => name, minLength: 1 }),
      (present, rows) => {
        const rules = rows.map((each, at) => ({ ...each, key: `own-${at}` }));
        const elements = rules.map(({ name, severity, key }) => ({
          id: name === '' ? 'Patient' : `Patient.${name}`,
          path: name === '' ? 'Patient' : `Patient.${name}`,
          constraint: [{ key, severity, human: 'x', expression: 'false' }],
        }));
        const root = elements.filter(({ id }) => id === 'Patient');
        const given = profile(
          elements.filter(({ id }) => id !== 'Patient'),
          root.flatMap(({ constraint }) => constraint),
        );
        const patient = {
          resourceType: 'Patient',
          meta: { profile: [url] },
          ...Object.fromEntries(present.map((name) => [name, values[name]])),
        };
        const { valid, issues } = validateBundle(patient, { profiles: [given] });
        const there = rules.filter(({ name }) => name === '' || present.includes(name));
        for (const { key, severity, name } of there) {
          const told = issues.filter(({ path }) => name === '' || path[0] === name);
          const own = told.filter(({ rule }) => rule === `${url}#${key}`);
          // What the schema has against a value is more basic, and is an error itself.
          const worse = told.some((each) => each.severity === 'error');
          expect(own.some((each) => each.severity === severity) || worse).toBe(true);
          if (severity === 'error') expect(valid).toBe(false);
        }
      },
    ),
    { numRuns: 200, seed: 7 },
  );
});
