import { expect, test } from 'vitest';
import { validateBundle, validateEntries } from '../../../src/validate/versions/all-r4.ts';

// Verdicts of HL7's validator (HAPI 8.4.0) on bundles of these forms stand in
// tests/reference/verdicts; batches and single resources by
// https://hl7.org/fhir/R4/http.html#trules, which speaks of transactions.

const base = 'https://clinic.example/fhir';
const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };
const patient = { resourceType: 'Patient', id: 'p', text };

function told({ issues }: { issues: ReturnType<typeof validateBundle>['issues'] }): string[] {
  return issues
    .filter(({ severity }) => severity === 'error')
    .map(({ code, path }) => `${code} ${path.join('.')}`);
}

function message(focus: string): object {
  const header = {
    resourceType: 'MessageHeader',
    id: 'm',
    text,
    eventCoding: { system: `${base}/events`, code: 'x' },
    source: { endpoint: base },
    focus: [{ reference: focus }],
  };
  const entry = [
    { fullUrl: `${base}/MessageHeader/m`, resource: header },
    { fullUrl: `${base}/Patient/p`, resource: patient },
  ];
  return { resourceType: 'Bundle', type: 'message', timestamp: '2026-03-04T10:00:00Z', entry };
}

test('what a message is about stands in it, looked at whole or entry by entry', async () => {
  const missing = 'unresolved-reference entry.0.resource.focus.0.reference';
  expect(told(validateBundle(message('Patient/p')))).toEqual([]);
  expect(told(validateBundle(message('Patient/q')))).toEqual([missing]);
  const found: string[] = [];
  for await (const each of validateEntries(() => [JSON.stringify(message('Patient/q'))])) {
    found.push(...told(each));
  }
  expect(found).toEqual([missing]);
});

test.each([
  ['transaction', 'Patient?identifier=a|b', false],
  ['transaction', 'Banana?identifier=a|b', true],
  ['transaction', 'Patient?=', true],
  ['batch', 'Patient?identifier=a|b', false],
  ['collection', 'Patient?identifier=a|b', true],
])('in a %s a reference %s', (type, reference, wrong) => {
  const resource = {
    resourceType: 'Observation',
    id: 'o',
    text,
    status: 'final',
    code: { text: 'x' },
    subject: { reference },
  };
  const request = { method: 'PUT', url: 'Observation/o' };
  const entry = {
    fullUrl: `${base}/Observation/o`,
    resource,
    ...(type !== 'collection' && { request }),
  };
  const bundle = { resourceType: 'Bundle', type, entry: [entry] };
  const place = 'invalid-value entry.0.resource.subject.reference';
  expect(told(validateBundle(bundle))).toEqual(wrong ? [place] : []);
  expect(told(validateBundle(resource))).toEqual([]);
});

test('a code has no tabs and line breaks, which the published pattern takes', () => {
  const resource = { ...patient, communication: [{ language: { coding: [{ code: 'a\tb' }] } }] };
  expect(told(validateBundle(resource))).toContain(
    'invalid-value communication.0.language.coding.0.code',
  );
});
