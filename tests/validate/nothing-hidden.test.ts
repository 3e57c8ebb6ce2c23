import { describe, expect, test } from 'vitest';
import { compileProfiles, validateBundle } from '../../src/validate/r4.ts';
import { thoroughR4 } from '../../src/validate/thorough.ts';

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
