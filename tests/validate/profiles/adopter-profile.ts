import {
  compileProfiles,
  type Profiles,
  validateBundle,
} from '../../../src/validate/versions/r4.ts';

// A profile as an adopter would give it: the elements of a snapshot that narrow Observation, by
// https://hl7.org/fhir/R4/profiling.html and https://hl7.org/fhir/R4/elementdefinition.html.

export const clinic = 'https://clinic.example/fhir';
export const url = `${clinic}/StructureDefinition/wrist-temperature`;
export const kinds = `${clinic}/CodeSystem/kinds`;
export const quantity = { type: [{ code: 'Quantity' }] };
export const concept = { type: [{ code: 'CodeableConcept' }] };

export const profile = {
  resourceType: 'StructureDefinition',
  url,
  fhirVersion: '4.0.1',
  type: 'Observation',
  derivation: 'constraint',
  snapshot: {
    element: [
      {
        id: 'Observation',
        path: 'Observation',
        constraint: [
          {
            key: 'wrist-1',
            severity: 'error',
            expression: "status = 'final' implies issued.exists()",
          },
        ],
      },
      {
        id: 'Observation.extension',
        path: 'Observation.extension',
        slicing: { discriminator: [{ type: 'value', path: 'url' }], rules: 'open' },
        type: [{ code: 'Extension' }],
      },
      {
        id: 'Observation.extension:shift',
        path: 'Observation.extension',
        sliceName: 'shift',
        min: 1,
        max: '1',
        type: [{ code: 'Extension', profile: [`${clinic}/StructureDefinition/shift`] }],
      },
      { id: 'Observation.status', path: 'Observation.status', min: 1, fixedCode: 'final' },
      {
        id: 'Observation.category',
        path: 'Observation.category',
        min: 1,
        max: '1',
        binding: { strength: 'required', valueSet: `${clinic}/ValueSet/kinds|1.0.0` },
        ...concept,
      },
      {
        id: 'Observation.code',
        path: 'Observation.code',
        min: 1,
        max: '1',
        patternCodeableConcept: { coding: [{ system: kinds, code: 'wrist' }] },
        ...concept,
      },
      {
        id: 'Observation.subject',
        path: 'Observation.subject',
        min: 1,
        max: '1',
        type: [{ code: 'Reference', targetProfile: [`${clinic}/StructureDefinition/worker`] }],
      },
      { id: 'Observation.performer', path: 'Observation.performer', max: '0' },
      { id: 'Observation.value[x]', path: 'Observation.value[x]', min: 1, max: '1', ...quantity },
      {
        id: 'Observation.value[x].value',
        path: 'Observation.value[x].value',
        min: 1,
        minValueDecimal: 20,
        maxValueDecimal: 45,
        type: [{ code: 'decimal' }],
      },
      {
        id: 'Observation.method',
        path: 'Observation.method',
        ...concept,
      },
      {
        id: 'Observation.method.text',
        path: 'Observation.method.text',
        maxLength: 5,
        type: [{ code: 'string' }],
      },
      {
        id: 'Observation.component',
        path: 'Observation.component',
        slicing: { discriminator: [{ type: 'pattern', path: 'code' }], rules: 'closed' },
        type: [{ code: 'BackboneElement' }],
      },
      {
        id: 'Observation.component:left',
        path: 'Observation.component',
        sliceName: 'left',
        min: 1,
        max: '1',
        type: [{ code: 'BackboneElement' }],
      },
      {
        id: 'Observation.component:left.code',
        path: 'Observation.component.code',
        min: 1,
        patternCodeableConcept: { text: 'Left' },
        ...concept,
      },
      {
        id: 'Observation.component:left.value[x]',
        path: 'Observation.component.value[x]',
        min: 1,
        ...quantity,
      },
    ],
  },
};

export const worker = {
  resourceType: 'StructureDefinition',
  url: `${clinic}/StructureDefinition/worker`,
  type: 'Patient',
  snapshot: {
    element: [
      { id: 'Patient', path: 'Patient' },
      { id: 'Patient.identifier', path: 'Patient.identifier', min: 1 },
      { id: 'Patient.birthDate', path: 'Patient.birthDate', type: [{ code: 'date' }] },
      {
        id: 'Patient.birthDate.extension',
        path: 'Patient.birthDate.extension',
        max: '0',
        type: [{ code: 'Extension' }],
      },
    ],
  },
};

export const shift = {
  resourceType: 'StructureDefinition',
  url: `${clinic}/StructureDefinition/shift`,
  type: 'Extension',
  context: [{ type: 'element', expression: 'Observation' }],
  snapshot: {
    element: [
      { id: 'Extension', path: 'Extension' },
      {
        id: 'Extension.url',
        path: 'Extension.url',
        fixedUri: `${clinic}/StructureDefinition/shift`,
      },
      { id: 'Extension.value[x]', path: 'Extension.value[x]', type: [{ code: 'code' }] },
    ],
  },
};

export const codeSystem = {
  resourceType: 'CodeSystem',
  url: kinds,
  content: 'complete',
  concept: [{ code: 'wrist', display: 'Wrist' }, { code: 'skin' }, { code: 'other' }],
};
export const valueSet = {
  resourceType: 'ValueSet',
  url: `${clinic}/ValueSet/kinds`,
  compose: { include: [{ system: kinds, concept: [{ code: 'wrist' }, { code: 'skin' }] }] },
};

export const text = {
  status: 'generated',
  div: '<div xmlns="http://www.w3.org/1999/xhtml">31 °C</div>',
};
const celsius = { unit: '°C', system: 'http://unitsofmeasure.org', code: 'Cel' };

export const observation = {
  resourceType: 'Observation',
  meta: { profile: [`${url}|1.0.0`] },
  text,
  contained: [
    {
      resourceType: 'Patient',
      id: 'p',
      identifier: [{ value: '7' }],
      birthDate: '1980-02-01',
    },
  ],
  extension: [{ url: `${clinic}/StructureDefinition/shift`, valueCode: 'late' }],
  status: 'final',
  issued: '2026-03-02T10:00:00Z',
  category: [{ coding: [{ system: kinds, code: 'skin' }] }],
  code: { coding: [{ system: kinds, code: 'wrist', display: 'Wrist' }], text: 'At the wrist' },
  subject: { reference: '#p' },
  valueQuantity: { value: 31, ...celsius },
  method: { text: 'Probe' },
  component: [{ code: { text: 'Left' }, valueQuantity: { value: 30, ...celsius } }],
};

export const profiles: Profiles = compileProfiles([profile, worker, shift, codeSystem, valueSet]);

/** Severity, code and place of each issue. */
export function told(
  resource: unknown,
  given: Parameters<typeof validateBundle>[1] = { profiles },
): string[] {
  return validateBundle(resource, given).issues.map(
    ({ severity, code, path }) => `${severity} ${code} ${path.join('.')}`,
  );
}

/** That the invariant of the profile is not evaluated at the fast level. */
export const unchecked = 'information unchecked-rule ';
