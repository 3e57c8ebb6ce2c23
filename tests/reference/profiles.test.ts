import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CANONICAL_BASE } from '../../src/fhir/names/systems.ts';
import { toXml } from '../../src/fhir/xml/to-xml.ts';
import { fileName, packageDefinitions } from '../../src/generate/fhir-package/package-files.ts';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { orThrow } from '../../src/issues/issue.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { type ReferenceResult, startValidator, type Validator } from './corpus.ts';
import { extensionsPack } from './definitions.ts';
import { exampleExams } from './exams.ts';

const examples = new URL('../../profiles/examples/', import.meta.url);
const folder = fileURLToPath(new URL('../../output/profile-package/', import.meta.url));

let validator: Validator;
beforeAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const order = { version: 'R4', base: CANONICAL_BASE, packageVersion: '0.1.0' } as const;
  for (const one of await packageDefinitions(order)) {
    writeFileSync(`${folder}${fileName(one)}`, JSON.stringify(one));
  }
  const pack = (await extensionsPack()).filter(({ version }) => version === 'R4');
  const load = [...pack, { version: 'R4' as const, folder }];
  validator = await startValidator({ load, anyCoding: true });
});
afterAll(() => validator.stop());

function errors({ issues }: ReferenceResult): string[] {
  return issues
    .filter(({ severity }) => severity === 'error' || severity === 'fatal')
    .map(({ location, message }) => `${location}: ${message}`);
}

describe('what conforms to the profiles', () => {
  it.each(readdirSync(examples))('example %s', async (id) => {
    const text = readFileSync(new URL(id, examples), 'utf8');
    expect(errors(await validator.validate({ id, version: 'R4', text }))).toEqual([]);
  });

  it.each(exampleExams().filter(({ name }) => name !== 'yearly-check.json'))(
    'example exam $name as a document, in JSON and in XML',
    async ({ name: id, exam }) => {
      const bundle = toBundleOrThrow(exam, { bundleType: 'document', profiles: true });
      const json = { id, version: 'R4', text: toJson(bundle) } as const;
      expect(errors(await validator.validate(json))).toEqual([]);
      const text = orThrow('write XML', toXml(bundle));
      const xml = await validator.validate({ id, version: 'R4', format: 'xml', text });
      expect(errors(xml)).toEqual([]);
    },
  );

  it('seeded exams', async () => {
    const exams = [
      ...sampleExams(1, 12, { size: 'small' }),
      ...sampleExams(1, 8, { size: 'edge' }),
    ];
    for (const exam of exams) {
      const text = toJson(toBundleOrThrow(exam, { profiles: true }));
      const result = await validator.validate({ id: exam.id, version: 'R4', text });
      expect({ id: exam.id, errors: errors(result) }).toEqual({ id: exam.id, errors: [] });
    }
  });
});

type Json = Record<string, unknown>;
const values = `${CANONICAL_BASE}/CodeSystem/values`;
const answer = (code: string) => ({ coding: [{ system: values, code }], text: code });
const without =
  (name: string) =>
  ({ [name]: _, ...rest }: Json): Json =>
    rest;
const withIt =
  (more: Json) =>
  (sound: Json): Json => ({ ...sound, ...more });

/** Each breaks one rule of a profile in an example of it, and none of FHIR itself. */
const violations: readonly [
  profile: string,
  what: string,
  change: (sound: Json) => Json,
  rule: RegExp,
][] = [
  ['observation', 'no identifier', without('identifier'), /identifier/],
  ['observation', 'no performer', without('performer'), /performer/],
  ['observation', 'no subject', without('subject'), /subject/],
  [
    'observation',
    'no words for the code',
    withIt({ code: { coding: [{ system: values, code: 'state.normal' }] } }),
    /code\.text/,
  ],
  [
    'observation',
    'nothing told',
    (sound) => without('component')(without('valueString')(without('valueCodeableConcept')(sound))),
    /fn-obs-1/,
  ],
  [
    'finding',
    'a state for a presence',
    withIt({ valueCodeableConcept: answer('state.normal') }),
    /values-presence/,
  ],
  [
    'finding',
    'a text for a presence',
    (sound) => ({ ...without('valueCodeableConcept')(sound), valueString: 'present' }),
    /valueString|CodeableConcept/,
  ],
  ['finding', 'no place', without('bodySite'), /bodySite/],
  [
    'finding',
    'no time',
    (sound) => without('effectivePeriod')(without('effectiveDateTime')(sound)),
    /effective/,
  ],
  ['finding', 'no interpretation', without('interpretation'), /interpretation/],
  [
    'finding',
    'present with a negative interpretation',
    (sound) => ({
      ...sound,
      valueCodeableConcept: answer('presence.present'),
      interpretation: interpretation('NEG'),
    }),
    /fn-fin-/,
  ],
  [
    'finding',
    'absent with a positive interpretation',
    (sound) => ({
      ...sound,
      valueCodeableConcept: answer('presence.absent'),
      interpretation: interpretation('POS'),
    }),
    /fn-fin-/,
  ],
  [
    'finding',
    'an interpretation of another kind',
    withIt({ interpretation: interpretation('H') }),
    /presence-interpretation/,
  ],
  [
    'finding',
    'a missing value',
    (sound) => ({
      ...without('valueCodeableConcept')(sound),
      dataAbsentReason: answer('presence.absent'),
    }),
    /value|dataAbsentReason/,
  ],
  [
    'region-state',
    'a presence for a state',
    withIt({ valueCodeableConcept: answer('presence.absent') }),
    /values-state/,
  ],
  [
    'region-state',
    'normal called abnormal',
    (sound) => ({
      ...without('dataAbsentReason')(sound),
      status: 'final',
      valueCodeableConcept: answer('state.normal'),
      interpretation: interpretation('A'),
    }),
    /fn-rst-1/,
  ],
  [
    'region-state',
    'not examined as a value',
    (sound) => ({
      ...without('dataAbsentReason')(without('interpretation')(sound)),
      valueCodeableConcept: answer('state.not-examined'),
    }),
    /fn-rst-3/,
  ],
  [
    'region-state',
    'neither value nor reason',
    (sound) => without('valueCodeableConcept')(without('dataAbsentReason')(sound)),
    /fn-obs-2/,
  ],
  ['sensation', 'a value beside the components', withIt({ valueString: 'normal' }), /value/],
  ['sensation', 'no components', without('component'), /component/],
  [
    'sensation',
    'a result of another kind',
    (sound) => firstComponent(sound, { valueCodeableConcept: answer('presence.present') }),
    /sensation-results/,
  ],
  [
    'sensation-comparison',
    'an answer of another kind',
    withIt({ valueCodeableConcept: answer('answer.yes') }),
    /values-comparison/,
  ],
  [
    'test',
    'a grade of another kind',
    withIt({ valueCodeableConcept: answer('presence.present') }),
    /test-results/,
  ],
  [
    'test',
    'no result and no reason',
    (sound) => without('valueCodeableConcept')(without('dataAbsentReason')(sound)),
    /fn-obs-[12]/,
  ],
  [
    'measurement',
    'a value in words',
    (sound) => ({ ...without('valueQuantity')(sound), valueString: '4 mm' }),
    /valueString|Quantity/,
  ],
  [
    'measurement',
    'a unit of another system',
    withIt({
      valueQuantity: { value: 4, unit: 'mm', system: 'http://example.org/units', code: 'mm' },
    }),
    /system/,
  ],
  ['measurement', 'a value without unit', withIt({ valueQuantity: { value: 4 } }), /system|code/],
  [
    'symptom',
    'an answer of another kind',
    withIt({ valueCodeableConcept: answer('presence.absent') }),
    /values-answer/,
  ],
  ['region-group', 'no members', without('hasMember'), /hasMember/],
  ['region-group', 'a value of its own', withIt({ valueString: 'normal' }), /value/],
  ['report', 'no results', without('result'), /result/],
  ['report', 'no performer', without('performer'), /performer/],
  [
    'report',
    'another code',
    withIt({ code: { coding: [{ system: 'http://loinc.org', code: '29545-1' }], text: 'x' } }),
    /code/,
  ],
  [
    'composition',
    'an empty section without a reason',
    (sound) => ({
      ...sound,
      section: [
        {
          title: 'x',
          code: { text: 'x' },
          text: { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' },
        },
      ],
    }),
    /fn-doc-1/,
  ],
  ['composition', 'no identifier', without('identifier'), /identifier/],
];

function interpretation(code: string): Json[] {
  const system = 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation';
  return [{ coding: [{ system, code }] }];
}

function firstComponent(sound: Json, change: Json): Json {
  const [first, ...others] = sound['component'] as Json[]; // a list in every example of a sensation
  return { ...sound, component: [{ ...first, ...change }, ...others] };
}

describe('what the profiles refuse', () => {
  it.each(violations)('%s: %s', async (profile, what, change, rule) => {
    const file = new URL(`face-neck-${profile}.json`, examples);
    const text = JSON.stringify(change(JSON.parse(readFileSync(file, 'utf8'))));
    const found = errors(await validator.validate({ id: what, version: 'R4', text }));
    expect(found.join('\n')).toMatch(rule);
    expect(found.join('\n')).toContain('face-neck-fhir.example');
  });
});
