import { validateBundle as validateR5 } from '../../../src/validate/versions/r5.ts';
import { changed } from '../example.ts';
import { observation, run } from './stage-cases.ts';

// The stages of extensions, references and codes.

// 7771000 stands in the value set of the extension, structure-laterality-vs.
const left = { coding: [{ system: 'http://snomed.info/sct', code: '7771000' }] };
const laterality = 'http://hl7.org/fhir/StructureDefinition/observation-structureLaterality';

run('extensions', [
  [
    'ext-1: a value or extensions',
    ['extension'],
    [{ url: 'https://clinic.example/x' }],
    'error broken-invariant extension.0',
    'information unchecked-extension extension.0',
  ],
  [
    'extensibility.html#Extension: an absolute url',
    ['extension'],
    [{ url: 'x', valueCode: 'y' }],
    'error invalid-value extension.0.url',
  ],
  [
    'extensibility.html#Extension: no version in the url',
    ['extension'],
    [{ url: 'https://clinic.example/x|1', valueCode: 'y' }],
    'error invalid-value extension.0.url',
  ],
  [
    'extensibility.html: a definition that is not held',
    ['extension'],
    [{ url: 'https://clinic.example/x', valueCode: 'y' }],
    'information unchecked-extension extension.0',
  ],
  [
    'defining-extensions.html#context: where it is defined for',
    ['bodySite'],
    { text: 'Cheek', extension: [{ url: laterality, valueCodeableConcept: left }] },
  ],
  [
    'defining-extensions.html#context: not elsewhere',
    ['method'],
    { text: 'Palpation', extension: [{ url: laterality, valueCodeableConcept: left }] },
    'error misplaced-extension method.extension.0',
  ],
  [
    'the type that its definition takes',
    ['bodySite'],
    { text: 'Cheek', extension: [{ url: laterality, valueString: 'Left' }] },
    'error wrong-type bodySite.extension.0.valueString',
  ],
  [
    'a modifier must be known',
    ['modifierExtension'],
    [{ url: 'https://clinic.example/x', valueBoolean: true }],
    'warning unchecked-extension modifierExtension.0',
  ],
  [
    'extensibility.html#modifierExtension: what modifies nothing',
    ['modifierExtension'],
    [{ url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'unknown' }],
    'error misplaced-extension modifierExtension.0',
  ],
]);

run('references', [
  [
    'ref-1: the id of a contained resource',
    ['subject'],
    { reference: '#z' },
    'error broken-invariant subject',
    'error broken-invariant ',
  ],
  [
    'references.html: a type that the element takes',
    ['subject'],
    { reference: '#q' },
    'error wrong-target subject',
    'error broken-invariant ',
  ],
  [
    'references.html: by its name alone',
    ['performer', 0],
    { reference: 'Medication/7' },
    'error wrong-target performer.0',
    'error broken-invariant ',
  ],
  [
    'references.html#literal: no spaces',
    ['device'],
    { reference: 'Device/7 8' },
    'error invalid-value device.reference',
  ],
  [
    'references.html#literal: a type and an id',
    ['device'],
    { reference: 'device 7' },
    'error invalid-value device.reference',
  ],
  [
    'references.html#literal: another form',
    ['device'],
    { reference: '7' },
    'warning invalid-value device.reference',
  ],
  ['references.html: a version of a resource', ['device'], { reference: 'Device/7/_history/2' }],
  [
    'references.html#Reference: its type',
    ['device'],
    { reference: 'Device/7', type: 'Patient' },
    'error contradiction device.type',
  ],
  [
    'references.html#Reference: a type that cannot stand here',
    ['device'],
    { type: 'Patient', display: 'Lamp' },
    'error wrong-target device.type',
  ],
  [
    'references.html#contained: an id',
    ['contained', 0, 'id'],
    undefined,
    'error missing-property contained.0.id',
    'error broken-invariant subject',
  ],
  [
    'references.html#contained: one id each',
    ['contained', 1, 'id'],
    'p',
    'error duplicate-id contained.1.id',
    'error broken-invariant performer.0',
  ],
]);

const loinc = 'http://loinc.org';

run('codes', [
  [
    'terminologies.html: a code that the system has',
    ['category', 0],
    {
      coding: [
        {
          system: 'http://terminology.hl7.org/CodeSystem/observation-category',
          code: 'exam',
          display: 'Exam',
        },
      ],
    },
  ],
  [
    'terminologies.html: a code that it has not',
    ['category', 0],
    {
      coding: [
        { system: 'http://terminology.hl7.org/CodeSystem/observation-category', code: 'examen' },
      ],
    },
    'error unknown-code category.0.coding.0.code',
  ],
  [
    'datatypes.html#Coding: the display of the code',
    ['category', 0],
    {
      coding: [
        {
          system: 'http://terminology.hl7.org/CodeSystem/observation-category',
          code: 'exam',
          display: 'Laboratory',
        },
      ],
    },
    'error wrong-display category.0.coding.0.display',
  ],
  [
    'datatypes.html#Coding: an absolute system',
    ['code'],
    { coding: [{ system: 'loinc', code: 'x' }] },
    'error invalid-value code.coding.0.system',
  ],
  [
    'datatypes.html#Coding: a value set is no system',
    ['code'],
    { coding: [{ system: 'http://hl7.org/fhir/ValueSet/observation-codes', code: 'x' }] },
    'error invalid-value code.coding.0.system',
  ],
  [
    'snomedct and loinc by their URI',
    ['code'],
    { coding: [{ system: 'https://loinc.org/', code: '8480-6' }] },
    'error invalid-value code.coding.0.system',
  ],
  // 29545-1 stands in terminology/loinc.json with its source.
  ['check digit of LOINC: sound', ['code'], { coding: [{ system: loinc, code: '29545-1' }] }],
  [
    'check digit of LOINC: wrong',
    ['code'],
    { coding: [{ system: loinc, code: '29545-2' }] },
    'error unknown-code code.coding.0.code',
  ],
  // 38266002 stands in the published Observation-f001.
  [
    'check digit of SNOMED CT: wrong',
    ['code'],
    { coding: [{ system: 'http://snomed.info/sct', code: '38266003' }] },
    'error unknown-code code.coding.0.code',
  ],
  ['UCUM: a unit', ['valueQuantity', 'code'], 'mm[Hg]'],
  ['UCUM: no unit', ['valueQuantity', 'code'], 'mmHg', 'error unknown-unit valueQuantity.code'],
  [
    'UCUM: case-sensitive',
    ['valueQuantity', 'code'],
    'MM',
    'error unknown-unit valueQuantity.code',
  ],
  [
    'terminologies.html#required: a code of the value set',
    ['contained', 0, 'maritalStatus'],
    { text: 'Married' },
    'warning unknown-code contained.0.maritalStatus',
  ],
  ['terminologies.html#required: languages of BCP 47', ['language'], 'de-CH'],
  [
    'terminologies.html#required: no language',
    ['language'],
    'xx-yy-zz',
    'error unknown-code language',
  ],
  [
    'terminologies.html#required: types of RFC 6838',
    ['contained', 0, 'photo', 0, 'contentType'],
    'picture',
    'error unknown-code contained.0.photo.0.contentType',
  ],
]);

run(
  'what R5 changed',
  [
    [
      'datatypes.html#decimal: at most 18 digits before the point',
      ['valueQuantity', 'value'],
      1_234_567_890_123_456_800,
      'error invalid-value valueQuantity.value',
    ],
    [
      'observation-definitions.html#Observation.triggeredBy',
      ['triggeredBy'],
      [{ observation: { reference: 'Observation/b' }, type: 'reflex' }],
    ],
    [
      'the types that a trigger can have',
      ['triggeredBy'],
      [{ observation: { reference: 'Patient/b' }, type: 'reflex' }],
      'error wrong-target triggeredBy.0.observation',
    ],
  ],
  validateR5,
  // An integer64 is text in JSON.
  changed(observation, ['contained', 0, 'photo', 0, 'size'], '5'),
);
