import { describe, expect, test } from 'vitest';
import { validateBundle as validateR4 } from '../../../src/validate/versions/r4.ts';
import { changed } from '../example.ts';

// One sound resource, one thing changed in it, and what is then told; each case names the rule. Pages
// are below https://hl7.org/fhir/R4/. That HL7's validator has the same verdicts is for
// tests/validate/verdicts/verdicts.test.ts.

const text = {
  status: 'generated',
  div: '<div xmlns="http://www.w3.org/1999/xhtml">Swelling, 31 mm</div>',
};
const mm = { unit: 'mm', system: 'http://unitsofmeasure.org', code: 'mm' };

export const observation: object = {
  resourceType: 'Observation',
  id: 'a',
  text,
  contained: [
    {
      resourceType: 'Patient',
      id: 'p',
      photo: [{ contentType: 'image/png', data: 'aGVsbG8=', size: 5 }],
    },
    { resourceType: 'Practitioner', id: 'q' },
  ],
  identifier: [{ system: 'https://clinic.example/ids', value: '7' }],
  status: 'final',
  category: [{ text: 'Examination' }],
  code: { text: 'Swelling' },
  subject: { reference: '#p' },
  effectiveDateTime: '2026-03-02T10:00:00+01:00',
  performer: [{ reference: '#q' }],
  valueQuantity: { value: 31, ...mm },
  note: [{ text: 'Soft', time: '2026-03-02' }],
  referenceRange: [{ low: { value: 0, ...mm } }],
};

export type Case = readonly [
  rule: string,
  path: readonly (string | number)[],
  value: unknown,
  ...told: string[],
];

export function run(
  name: string,
  cases: readonly Case[],
  validate: typeof validateR4 = validateR4,
  base: object = observation,
): void {
  describe(name, () => {
    test.each(cases.map(([rule, path, value, ...told]) => ({ rule, path, value, told })))(
      '$rule',
      ({ path, value, told }) => {
        const { issues } = validate(changed(base, path, value));
        expect(issues.map((one) => `${one.severity} ${one.code} ${one.path.join('.')}`)).toEqual(
          told,
        );
      },
    );
  });
}
