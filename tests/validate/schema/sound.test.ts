import { describe, expect, test } from 'vitest';
import type { Issue } from '../../../src/issues/issue.ts';
import {
  type Validation,
  validateBundle as validateR4,
} from '../../../src/validate/versions/r4.ts';
import { validateBundle as validateR4b } from '../../../src/validate/versions/r4b.ts';
import { changed, example } from '../example.ts';
import { text } from './expected.ts';

const examples = [
  'Observation-abdo-tender',
  'Observation-vomiting',
  'Observation-blood-pressure-dar',
  'DiagnosticReport-ultrasound',
  'Bundle-lipids',
];

describe('examples published by HL7 for R4 have no issue', () => {
  test.each(examples)('%s', (name) => {
    expect(apartFromProfiles(validateR4(example(name)))).toEqual([]);
  });

  // None of the five uses anything that R4B changed.
  test.each(examples)('%s, read as R4B', (name) => {
    expect(apartFromProfiles(validateR4b(example(name)))).toEqual([]);
  });
});

/** One example claims HL7's profile of vital signs, which is not given here. */
function apartFromProfiles({ conformance, issues }: Validation): readonly Issue[] {
  expect(conformance).not.toBe('does-not-conform');
  return issues.filter(({ code }) => code !== 'unchecked-profile');
}

describe('what R4 lets pass', () => {
  const base = example('Observation-abdo-tender');
  const absent = {
    url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason',
    valueCode: 'unknown',
  };

  test('an extension in place of a required text', () => {
    const note = { ...base, note: [{ _text: { extension: [absent] } }] };
    expect(validateR4(note).issues).toEqual([]);
  });

  test('null in a list of primitives, where only the extension stands', () => {
    const patient = {
      resourceType: 'Patient',
      text,
      name: [{ given: ['Ida', null], _given: [null, { extension: [absent] }] }],
    };
    expect(validateR4(patient).issues).toEqual([]);
  });

  test('a no-break space in text', () => {
    expect(validateR4(changed(base, ['code', 'text'], '12\u00A0mm')).issues).toEqual([]);
  });
});
