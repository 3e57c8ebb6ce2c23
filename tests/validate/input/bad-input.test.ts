import { describe, expect, test } from 'vitest';
import { fromJson } from '../../../src/fhir/json/from-json.ts';
import { toJson } from '../../../src/fhir/json/to-json.ts';
import { hasErrors, type Issue } from '../../../src/issues/issue.ts';
import { thoroughR4 } from '../../../src/validate/thorough/thorough.ts';
import { validateBundle as r4 } from '../../../src/validate/versions/r4.ts';
import { validateBundle as r4b } from '../../../src/validate/versions/r4b.ts';
import { validateBundle as r5 } from '../../../src/validate/versions/r5.ts';
import { example } from '../example.ts';

// Whatever arrives gives issues: no throw, no hang, and nothing of a patient in an issue.

/** What is said of a text: of reading it, or of the bundle in it. */
function issuesOf(text: string, validate: typeof r4 = r4): readonly Issue[] {
  const { value, issues } = fromJson(text);
  return hasErrors(issues) ? issues : [...issues, ...validate(value).issues];
}

function told(text: string): string[] {
  return issuesOf(text)
    .filter(({ severity }) => severity === 'error')
    .map(({ code, path }) => `${code} ${path.join('.')}`);
}

const narrative =
  '"text":{"status":"generated","div":"<div xmlns=\\"http://www.w3.org/1999/xhtml\\">1</div>"}';
const observation = (more: string): string =>
  `{"resourceType":"Observation",${narrative},"status":"final","code":{"text":"Width"},${more}}`;
const nested = (depth: number, open: string, close: string): string =>
  `${open.repeat(depth)}1${close.repeat(depth)}`;

const texts: readonly [what: string, text: string, ...told: string[]][] = [
  ['sound', observation('"valueInteger":1')],
  ['no text at all', '', 'not-json '],
  ['no JSON', '<Bundle xmlns="http://hl7.org/fhir"/>', 'not-json '],
  ['half of a JSON', '{"resourceType":"Bundle","entry":[', 'not-json entry.0'],
  ['JSON with a comment', '{"resourceType":"Bundle" /* all */}', 'not-json '],
  ['two JSON texts', '{}{}', 'not-json '],
  ['a number', '7', 'wrong-type '],
  ['a list', '[{"resourceType":"Bundle"}]', 'wrong-type '],
  ['null', 'null', 'wrong-type '],
  ['no resource', '{"hello":"world"}', 'missing-property resourceType'],
  ['a resource that FHIR has not', '{"resourceType":"Bundel"}', 'unknown-code resourceType'],
  ['a type that is no text', '{"resourceType":{"a":1}}', 'wrong-type resourceType'],
  ['a list for an object', observation('"subject":[{"display":"x"}]'), 'wrong-type subject'],
  ['an object for a list', observation('"category":{"text":"x"}'), 'wrong-type category'],
  ['a list of lists', observation('"category":[[{"text":"x"}]]'), 'wrong-type category.0'],
  ['text for an object', observation('"subject":"x"'), 'wrong-type subject'],
  ['NaN', observation('"valueQuantity":{"value":NaN}'), 'not-json valueQuantity.value'],
  ['Infinity', observation('"valueInteger":Infinity'), 'not-json valueInteger'],
  [
    'a number in quotes',
    observation('"valueQuantity":{"value":"NaN"}'),
    'wrong-type valueQuantity.value',
  ],
  ['a hexadecimal number', observation('"valueInteger":0x10'), 'not-json '],
  ['a number that begins with 0', observation('"valueInteger":007'), 'not-json '],
  [
    'a number too large for a double',
    observation('"valueQuantity":{"value":1e999}'),
    'not-json valueQuantity.value',
  ],
  ['a property twice', observation('"status":"amended"'), 'duplicate-property status'],
  ['a prototype', observation('"__proto__":{"status":"final"}'), 'unsafe-property __proto__'],
  [
    'a constructor',
    observation('"constructor":{"prototype":{"a":1}}'),
    'unsafe-property constructor',
    'unsafe-property constructor.prototype',
  ],
  [
    'a prototype in place of a status',
    '{"resourceType":"Observation","__proto__":{"status":"final"},"code":{"text":"x"}}',
    'unsafe-property __proto__',
    'missing-property status',
  ],
  [
    'half of a character',
    observation('"device":{"display":"\\ud83d"}'),
    'invalid-unicode device.display',
  ],
  [
    'an unescaped control character',
    observation('"device":{"display":"\u0001"}'),
    'not-json device.display',
  ],
  [
    // FHIR advises against it, and it is told as a warning.
    'an escaped one',
    observation('"device":{"display":"\\u0000"}'),
  ],
  ['10,000 levels of lists', nested(10_000, '[', ']'), 'too-deep '],
  ['10,000 levels of objects', nested(10_000, '{"a":', '}'), 'too-deep '],
];

describe('a text', () => {
  test.each(texts.map(([what, text, ...issues]) => ({ what, text, issues })))(
    '$what',
    ({ text, issues }) => {
      expect(told(text).map((line) => line.replace(/^(too-deep) .*/, '$1 '))).toEqual(issues);
    },
  );
});

describe('a value that no text could give', () => {
  const cyclic: Record<string, unknown> = { resourceType: 'Bundle', type: 'collection' };
  cyclic['entry'] = [{ resource: cyclic }];
  let deep: unknown = {};
  for (let level = 0; level < 10_000; level++) deep = { extension: [deep] };
  const sound = example('Observation-abdo-tender');

  test.each([
    ['a function', () => 1],
    ['a symbol', Symbol('x')],
    ['a bigint', 7n],
    ['a date', new Date(0)],
    ['a map', new Map([['resourceType', 'Bundle']])],
    ['a bundle in itself', cyclic],
    ['10,000 levels', deep],
    ['10,000 levels in a resource', { ...sound, extension: [deep] }],
    ['NaN', { ...sound, valueInteger: Number.NaN }],
    ['Infinity', { ...sound, valueQuantity: { value: Number.POSITIVE_INFINITY } }],
    ['a list with holes', { ...sound, category: new Array(3) }],
    ['an entry with holes', { resourceType: 'Bundle', type: 'transaction', entry: new Array(9) }],
    ['undefined in a list', { ...sound, category: [undefined] }],
    ['a resource of numbers', { resourceType: 'Bundle', entry: [1, null, 'x', []] }],
    [
      'an entry of nothing',
      { resourceType: 'Bundle', type: 'document', entry: [{ resource: null }] },
    ],
  ])('%s', (_, value) => {
    for (const validate of [r4, r4b, r5]) {
      const { valid, issues } = validate(value);
      expect(valid).toBe(false);
      expect(issues.length).toBeLessThan(50);
    }
    expect(r4(value, { level: 'thorough', engine: thoroughR4 }).valid).toBe(false);
  });
});

test('nothing that is read changes what objects inherit', () => {
  issuesOf(observation('"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":1}}'));
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
});

test('decimals keep their digits', () => {
  // https://hl7.org/fhir/R4/datatypes.html#decimal: the precision of a decimal has meaning.
  const digits = '0.12345678901234567';
  const text = observation(`"valueQuantity":{"value":${digits}}`);
  const { value } = fromJson(text);
  expect(r4(value).valid).toBe(true);
  expect(toJson(value)).toContain(`"value":${digits}`);
  const long = fromJson(observation(`"valueQuantity":{"value":1.${'0'.repeat(400)}}`)).value;
  expect(r4(long).issues.map(({ severity, code }) => `${severity} ${code}`)).toEqual([
    'warning invalid-value',
  ]);
  expect(toJson(long)).toContain(`1.${'0'.repeat(400)}`);
});

describe('no value is in an issue', () => {
  const secret = 'Marguerite';
  const broken = [
    observation(`"subject":{"reference":"${secret} 7","display":7}`),
    observation(`"subject":{"reference":"#${secret}"}`),
    observation(`"effectiveDateTime":"${secret}"`),
    observation(`"${secret.toLowerCase()}":1`).replace(secret.toLowerCase(), 'statuss'),
    observation(
      `"valueQuantity":{"value":1,"system":"http://unitsofmeasure.org","code":"${secret}"}`,
    ),
    observation(`"device":{"display":"${secret} "}`),
    observation(`"identifier":[{"system":"${secret}","value":"${secret}"}]`),
    observation(`"bodySite":{"coding":[{"system":"loinc","code":"${secret}"}]}`),
    `{"resourceType":"Observation","text":{"status":"generated","div":"<div><script>${secret}</script></div>"}}`,
    `{"resourceType":"${secret}"}`,
    `{"status":"${secret}"`,
  ];

  test.each(broken)('%s', (text) => {
    const issues = issuesOf(text);
    expect(issues.length).toBeGreaterThan(0);
    expect(JSON.stringify(issues)).not.toContain(secret);
  });
});

test('of a bundle of 20,000 faults a thousand are told, with a count', () => {
  const entry = Array.from({ length: 20_000 }, (_, at) => ({
    fullUrl: `https://clinic.example/Observation/n${at}`,
    resource: {
      resourceType: 'Observation',
      id: `n${at}`,
      subject: { reference: `urn:uuid:${at}` },
    },
  }));
  const { issues } = r4({ resourceType: 'Bundle', type: 'collection', entry });
  expect(issues).toHaveLength(1001);
  expect(issues.at(-1)?.code).toBe('issues-cut');
});
