import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type FhirRelease, startValidator, type Validator } from './corpus.ts';
import { extensionsPack, publishedExamples, releases } from './definitions.ts';
import { askExamples, exampleVerdictsFile, exampleVerdictsText } from './example-verdicts.ts';

let validator: Validator;
beforeAll(async () => {
  validator = await startValidator({ load: await extensionsPack() });
});
afterAll(() => validator.stop());

async function example(version: FhirRelease, file: string): Promise<string> {
  return readFile(join(await publishedExamples(version), file), 'utf8');
}

it('HL7s validator says of every published example what it said when the verdicts were kept', async () => {
  const verdicts = await askExamples();
  expect(exampleVerdictsText(verdicts)).toBe(readFileSync(exampleVerdictsFile, 'utf8'));
  expect(Object.keys(verdicts.R5).length).toBeGreaterThan(200);
}, 600_000);

type Json = Record<string, unknown>;

// Each makes one fault in the published Observation-f001 (a glucose value with unit and range). The
// message is the validator's own name for the fault, or its text where it has no name.
const faults: readonly { fault: string; make: (sound: Json) => Json; message: RegExp }[] = [
  {
    fault: 'status that is no code',
    make: (sound) => ({ ...sound, status: 'done' }),
    message: /Terminology_TX_NoValid_16/,
  },
  {
    fault: 'no status',
    make: ({ status: _, ...rest }) => rest,
    message: /Observation\.status: minimum required = 1/,
  },
  {
    fault: 'no code',
    make: ({ code: _, ...rest }) => rest,
    message: /Observation\.code: minimum required = 1/,
  },
  {
    fault: 'value and dataAbsentReason (obs-6)',
    make: (sound) => ({ ...sound, dataAbsentReason: absent('unknown') }),
    message: /#obs-6/,
  },
  {
    fault: 'component with the code and with a value beside the value (obs-7)',
    make: (sound) => ({ ...sound, component: [{ code: sound.code, valueString: 'high' }] }),
    message: /#obs-7/,
  },
  {
    fault: 'two values',
    make: (sound) => ({ ...sound, valueString: 'high' }),
    message: /Unrecognized property 'valueString'/,
  },
  {
    fault: 'date that does not exist',
    make: ({ effectivePeriod: _, ...rest }) => ({ ...rest, effectiveDateTime: '2026-02-30' }),
    message: /Type_Specific_Checks_DT_DateTime_Valid/,
  },
  {
    fault: 'time without zone',
    make: ({ effectivePeriod: _, ...rest }) => ({
      ...rest,
      effectiveDateTime: '2026-02-03T10:00:00',
    }),
    message: /Type_Specific_Checks_DT_DateTime_TZ/,
  },
  {
    fault: 'unit code without system (qty-3)',
    make: (sound) => ({ ...sound, valueQuantity: { value: 6.3, code: 'mmol/L' } }),
    message: /#qty-3/,
  },
  {
    fault: 'unit that is no UCUM code',
    make: (sound) => ({
      ...sound,
      valueQuantity: { value: 6.3, code: 'mmols', system: 'http://unitsofmeasure.org' },
    }),
    message: /Error processing unit 'mmols'/,
  },
  {
    fault: 'empty array',
    make: (sound) => ({ ...sound, note: [] }),
    message: /Array cannot be empty/,
  },
  {
    fault: 'empty string',
    make: (sound) => ({ ...sound, note: [{ text: '' }] }),
    message: /Type_Specific_Checks_DT_Primitive_NotEmpty/,
  },
  {
    fault: 'property that is not defined',
    make: (sound) => ({ ...sound, bodySide: 'left' }),
    message: /Unrecognized property 'bodySide'/,
  },
  {
    fault: 'script in the narrative',
    make: (sound) => ({ ...sound, text: narrative('<script>alert(1)</script>') }),
    message: /XHTML_XHTML_Element_Illegal/,
  },
  {
    fault: 'empty narrative',
    make: (sound) => ({ ...sound, text: narrative(' ') }),
    message: /#txt-2/,
  },
  {
    fault: 'display of another code',
    make: (sound) => ({ ...sound, dataAbsentReason: absent('unknown', 'Masked') }),
    message: /Concept Display "Masked" does not match expected "Unknown"/,
  },
  {
    fault: 'code outside a complete code system',
    make: (sound) => ({ ...sound, dataAbsentReason: absent('forgotten') }),
    message: /Unknown code '.*#forgotten'/,
  },
  {
    fault: 'profile that is not known',
    make: (sound) => ({ ...sound, meta: { profile: ['http://example.org/none'] } }),
    message: /Validation_VAL_Profile_Unknown/,
  },
  {
    fault: 'resource type that is not defined',
    make: (sound) => ({ ...sound, resourceType: 'Observations' }),
    message: /unknown or unrecognized resource name/,
  },
];

function absent(code: string, display?: string): Json {
  const system = 'http://terminology.hl7.org/CodeSystem/data-absent-reason';
  return { coding: [{ system, code, ...(display !== undefined && { display }) }] };
}

function narrative(xhtml: string): Json {
  return {
    status: 'generated',
    div: `<div xmlns="http://www.w3.org/1999/xhtml">${xhtml}</div>`,
  };
}

describe.each(releases)('planted faults in %s', (version) => {
  it.each(faults)('$fault: refused', async ({ fault, make, message }) => {
    const sound = JSON.parse(await example(version, 'Observation-f001.json')) as Json;
    const result = await validator.validate({ id: fault, version, resource: make(sound) });
    const errors = result.issues.filter(({ severity }) => severity !== 'warning');
    expect(result.valid).toBe(false);
    expect(errors.map((found) => `${found.messageId} ${found.message}`).join('\n')).toMatch(
      message,
    );
  });
});

describe('text that cannot be read', () => {
  const unreadable: readonly { what: string; format: 'json' | 'xml'; text: string }[] = [
    { what: 'nothing', format: 'json', text: '' },
    { what: 'a list', format: 'json', text: '[]' },
    { what: 'JSON cut off', format: 'json', text: '{"resourceType":"Observation","sta' },
    {
      what: 'JSON nested 100,000 deep',
      format: 'json',
      text: `{"resourceType":"Observation","extension":${'[{"extension":'.repeat(100_000)}`,
    },
    { what: 'XML cut off', format: 'xml', text: '<Observation xmlns="http://hl7.org/fhir">' },
    {
      what: 'XML with an external entity',
      format: 'xml',
      text: '<!DOCTYPE a [<!ENTITY e SYSTEM "file:///nowhere">]><Observation xmlns="http://hl7.org/fhir"><status value="&e;"/></Observation>',
    },
  ];

  it.each(unreadable)('$what: an issue, and the next verdict comes', async ({ format, text }) => {
    const result = await validator.validate({ id: 'unreadable', version: 'R4', format, text });
    expect(result).toMatchObject({ id: 'unreadable', valid: false });
    expect(result.issues.map(({ severity }) => severity)).toEqual(['fatal']);
    const sound = await example('R4', 'Observation-f001.json');
    expect(await validator.validate({ id: 'next', version: 'R4', text: sound })).toEqual({
      id: 'next',
      valid: true,
      issues: [],
    });
  });

  it('a property said twice: refused', async () => {
    const sound = await example('R4', 'Observation-f001.json');
    const text = sound.replace(/"status":\s*"final"/, '"status":"final","status":"amended"');
    const result = await validator.validate({ id: 'twice', version: 'R4', text });
    expect(result.issues.map(({ message }) => message)).toContain(
      "The JSON property 'status' is a duplicate and will be ignored",
    );
  });
});
