import { expect, test } from 'vitest';
import * as r4 from '../../src/validate/versions/all-r4.ts';
import * as r4b from '../../src/validate/versions/all-r4b.ts';
import * as r5 from '../../src/validate/versions/all-r5.ts';

// Pages of the three versions: https://hl7.org/fhir/directory.html.

const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };
const broken = {
  resourceType: 'Patient',
  id: 'p',
  text,
  gender: 'banana',
  birthDate: '2026-02-30',
  identifier: [{ system: 'ids', value: '1' }],
  generalPractitioner: [{ reference: 'Group/1' }],
};

test.each([
  ['R4', r4],
  ['R4B', r4b],
  ['R5', r5],
] as const)('every link of an issue leads to %s', (version, { validateBundle }) => {
  const { issues } = validateBundle(broken);
  const links = issues.flatMap(({ rule }) => (rule?.startsWith('https:') ? [rule] : []));
  expect(links.length).toBeGreaterThan(3);
  const page = `https://hl7.org/fhir/${version}/`;
  expect(links.filter((link) => !link.startsWith(page))).toEqual([]);
});

test.each(['R4', 'R4B', 'R5'])('a severity is found by the link of %s', (version) => {
  const rule = `https://hl7.org/fhir/${version}/datatypes.html#Identifier`;
  for (const { validateBundle } of [r4, r4b, r5]) {
    const { issues } = validateBundle(broken, { severities: [{ rule, severity: 'ignored' }] });
    expect(issues.map(({ path }) => path[0])).not.toContain('identifier');
    expect(issues.map(({ path }) => path[0])).toContain('birthDate');
  }
});
