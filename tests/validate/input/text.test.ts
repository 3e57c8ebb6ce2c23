import { describe, expect, it } from 'vitest';
import { toXml } from '../../../src/fhir/xml/to-xml.ts';
import { orThrow, toBundleOrThrow, toJson } from '../../../src/index.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import * as r4 from '../../../src/validate/versions/all-r4.ts';
import * as r4b from '../../../src/validate/versions/all-r4b.ts';
import * as r5 from '../../../src/validate/versions/all-r5.ts';

const entries = { R4: r4, R4B: r4b, R5: r5 } as const;
const versions = ['R4', 'R4B', 'R5'] as const;

function told({ issues }: r4.Validation): unknown[] {
  return issues.map(({ code, path, severity }) => ({ code, path, severity }));
}

describe.each(versions)('texts of %s', (version) => {
  const { validateText, validateBundle } = entries[version];
  const [exam] = sampleExams(7, 1, { size: 'small' });
  const bundle = toBundleOrThrow(exam ?? expect.fail(), { fhirVersion: version });
  // A fault deep inside, so that there is something to tell.
  const broken = JSON.parse(toJson(bundle).replace('"status":"final"', '"status":"done"'));

  it('have the same issues as JSON, as XML and as an object', () => {
    const object = validateBundle(broken);
    expect(object.valid).toBe(false);
    const json = validateText(toJson(broken));
    const xml = validateText(orThrow('write', toXml(broken, { fhirVersion: version })));
    expect(told(json)).toEqual(told(object));
    expect(told(xml)).toEqual(told(object));
  });

  it('have the place of each issue', () => {
    const json = toJson(broken, { pretty: true });
    const xml = orThrow('write', toXml(broken, { fhirVersion: version, pretty: true }));
    for (const [text, mark] of [
      [json, /"status": "done"/],
      [xml, /<status value="done"\/>/],
    ] as const) {
      const wrong = validateText(text).issues.find(({ path }) => path.at(-1) === 'status');
      const line = text.split('\n').findIndex((each) => mark.test(each)) + 1;
      expect(wrong?.source).toMatchObject({ line });
    }
  });
});

describe('places in JSON', () => {
  const placeOf = (text: string, at: RegExp) => {
    const lines = text.slice(0, text.search(at)).split('\n');
    return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
  };
  const text = `{
  "resourceType": "Patient",
  "name": [
    { "given": ["a \\"}] {", ""], "family": "x" },
    { "use": "never", "pe\\u0072iod": { "start": "2021-13-01" } }
  ],
  "contact": [{}]
}`;

  it.each([
    ['name[0].given[1]', /"" *\]/],
    ['name[1].use', /"never"/],
    ['name[1].period.start', /"2021-13/],
    ['contact[0]', /\{\}/],
  ])('are those of %s', (path, at) => {
    const found = r4
      .validateText(text)
      .issues.find((each) => each.path.map(String).join('.') === path.replace(/\[(\d)\]/g, '.$1'));
    expect(found?.source).toEqual(placeOf(text, at));
  });

  it('are those of the object where a property is missing', () => {
    const observation = '{"resourceType":"Observation",\n "status":"final"}';
    const [missing] = r4
      .validateText(observation)
      .issues.filter(({ code }) => code === 'missing-property');
    expect(missing).toMatchObject({ path: ['code'], source: { line: 1, column: 1 } });
  });

  it('have a byte order mark before them', () => {
    expect(r4.validateText('\uFEFF{"resourceType":"Basic"}').issues.length).toBeGreaterThan(0);
    expect(r4.validateText('\uFEFF{').conformance).toBe('does-not-conform');
  });
});

// Rules of https://hl7.org/fhir/R4/xml.html; what HL7's validator says of more of them is kept in
// tests/reference/verdicts/xml.json.
describe('faults of XML', () => {
  const patient = (inner: string, attributes = 'xmlns="http://hl7.org/fhir"') =>
    `<Patient ${attributes}>\n${inner}\n</Patient>`;
  it.each([
    ['an element out of order', patient('<active value="true"/><id value="a"/>'), 'wrong-order'],
    ['an unknown element', patient('<banana value="true"/>'), 'unknown-property'],
    ['an unknown attribute', patient('<active value="true" x="y"/>'), 'unknown-property'],
    ['text between elements', patient('<active value="true"/>loose'), 'invalid-value'],
    ['an element without content', patient('<name/>'), 'empty-value'],
    ['an empty value', patient('<language value=""/>'), 'empty-value'],
    ['a word for a number', patient('<multipleBirthInteger value="two"/>'), 'invalid-value'],
    ['another namespace', patient('', 'xmlns="urn:hl7-org:v3"'), 'unchecked-resource'],
    ['a document type', `<!DOCTYPE x>${patient('')}`, 'forbidden-doctype'],
    ['a processing instruction', `<?go on?>${patient('')}`, 'unknown-property'],
    [
      'another character set',
      `<?xml version="1.0" encoding="ISO-8859-1"?>${patient('')}`,
      'undeclared-encoding',
    ],
    ['no end', '<Patient xmlns="http://hl7.org/fhir">', 'not-well-formed'],
    [
      'a rule of the resource',
      patient('<contact><gender value="male"/></contact>'),
      'broken-invariant',
    ],
  ])('%s is told once, at its place', (_, text, code) => {
    const { issues, conformance } = r4.validateText(text);
    expect(conformance).toBe('does-not-conform');
    const errors = issues.filter(({ severity }) => severity === 'error');
    expect(errors.map((each) => each.code)).toEqual([code]);
    expect(errors[0]?.source).toMatchObject({
      line: expect.any(Number),
      column: expect.any(Number),
    });
  });

  it.each([
    [
      'the namespace of XHTML around the narrative',
      '<text><status value="generated"/><div>x</div></text>',
      '',
    ],
    ['a prefix for FHIR', '<active value="true"/>', 'f:'],
  ])('%s is none', (_, inner, prefix) => {
    const narrative = prefix === '';
    const text = narrative
      ? `<f:Patient xmlns:f="http://hl7.org/fhir" xmlns="http://www.w3.org/1999/xhtml">${inner.replace(/<(\/?)(text|status)/g, '<$1f:$2')}</f:Patient>`
      : `<f:Patient xmlns:f="http://hl7.org/fhir">${inner.replace(/<(\/?)/g, '<$1f:')}</f:Patient>`;
    expect(r4.validateText(text).issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('lines', () => {
  const lines = [
    '{"resourceType":"Patient","active":true}',
    '',
    '{"resourceType":"Patient","active":"yes"}',
    '{"resourceType":',
    '{"resourceType":"Basic"}',
  ].join('\n');

  it.each([1, 7, 1000])('are validated one by one, from pieces of %i characters', async (size) => {
    const pieces = lines.match(new RegExp(`[\\s\\S]{1,${size}}`, 'g')) ?? [];
    const found: [number, string, unknown][] = [];
    for await (const { line, conformance, issues } of r4.validateLines(pieces)) {
      const at = issues.find(({ severity }) => severity === 'error')?.source;
      found.push([line, conformance, at]);
    }
    expect(found).toEqual([
      [1, 'conforms', undefined],
      [3, 'does-not-conform', { line: 3, column: 36 }],
      [4, 'does-not-conform', { line: 4, column: 17 }],
      [5, 'does-not-conform', { line: 5, column: 1 }],
    ]);
  });
});
