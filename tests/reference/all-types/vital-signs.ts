import { createHash } from 'node:crypto';
import { loincCodes, snomedCodes } from '../../../src/validate/tables/vital-sign-codes.ts';
import type { FhirRelease } from '../corpus.ts';

/** An Observation of a vital sign, sound or with one fault; the same on every machine. */
export interface VitalSignCase {
  readonly id: string;
  readonly version: FhirRelease;
  readonly text: string;
  /** The first eight digits of the SHA-256 of the text. */
  readonly digest: string;
}

type Json = Record<string, unknown>;

const LOINC = 'http://loinc.org';
const SNOMED = 'http://snomed.info/sct';
const UCUM = 'http://unitsofmeasure.org';

/** A sound value of each profile; the units are those of its page (observation-vitalsigns.html). */
const sound: Readonly<Record<string, Json>> = {
  vitalspanel: { hasMember: [{ reference: 'Observation/r' }] },
  resprate: quantity(16, '/min'),
  heartrate: quantity(64, '/min'),
  oxygensat: quantity(97, '%'),
  bodytemp: quantity(36.6, 'Cel'),
  bodyheight: quantity(178, 'cm'),
  headcircum: quantity(56, 'cm'),
  bodyweight: quantity(71, 'kg'),
  bmi: quantity(22.4, 'kg/m2'),
  bp: { component: [pressure('8480-6', 120), pressure('8462-4', 80)] },
};

function quantity(value: number, code: string): Json {
  return { valueQuantity: { value, unit: code, system: UCUM, code } };
}

function pressure(code: string, value: number): Json {
  return { code: { coding: [{ system: LOINC, code }] }, ...quantity(value, 'mm[Hg]') };
}

function observation(profile: string, coding: Json, version: FhirRelease): Json {
  const system = 'http://terminology.hl7.org/CodeSystem/observation-category';
  const category = [{ coding: [{ system, code: 'vital-signs' }] }];
  return {
    resourceType: 'Observation',
    status: 'final',
    category,
    code: { coding: [coding] },
    subject: { reference: 'Patient/harbour-1' },
    effectiveDateTime: '2026-03-04',
    performer: [{ display: version }],
    ...sound[profile],
  };
}

type Fault = (resource: Json, profile: string) => void;

const without =
  (name: string): Fault =>
  (resource) => {
    delete resource[name];
  };
const changed =
  (change: Json): Fault =>
  (resource) => {
    Object.assign(resource, change);
  };
const unit =
  (change: Json): Fault =>
  (resource) => {
    const { valueQuantity } = resource;
    if (typeof valueQuantity === 'object') {
      resource['valueQuantity'] = { ...valueQuantity, ...change };
    }
  };
const components =
  (change: (list: Json[]) => Json[]): Fault =>
  (resource) => {
    const { component } = resource;
    if (Array.isArray(component)) resource['component'] = change(component);
  };

const faults: Readonly<Record<string, Fault>> = {
  sound: () => {},
  'no-category': without('category'),
  'other-category': changed({
    category: [
      {
        coding: [
          { system: 'http://terminology.hl7.org/CodeSystem/observation-category', code: 'exam' },
        ],
      },
    ],
  }),
  'category-twice': (resource) => {
    const { category } = resource;
    if (Array.isArray(category)) resource['category'] = [...category, ...category];
  },
  'category-in-words': changed({ category: [{ text: 'vital signs' }] }),
  'no-subject': without('subject'),
  'no-time': without('effectiveDateTime'),
  'time-of-a-year': changed({ effectiveDateTime: '2026' }),
  'time-of-a-month': changed({ effectiveDateTime: '2026-03' }),
  'time-of-a-minute': changed({ effectiveDateTime: '2026-03-04T10:00:00Z' }),
  'a-period': (resource) => {
    delete resource['effectiveDateTime'];
    resource['effectivePeriod'] = { start: '2026-03-04', end: '2026-03-05' };
  },
  'an-instant': (resource) => {
    delete resource['effectiveDateTime'];
    resource['effectiveInstant'] = '2026-03-04T10:00:00Z';
  },
  'no-value': (resource) => {
    delete resource['valueQuantity'];
    delete resource['component'];
    delete resource['hasMember'];
  },
  'reason-for-no-value': (resource) => {
    delete resource['valueQuantity'];
    delete resource['component'];
    delete resource['hasMember'];
    resource['dataAbsentReason'] = {
      coding: [
        { system: 'http://terminology.hl7.org/CodeSystem/data-absent-reason', code: 'unknown' },
      ],
    };
  },
  'value-in-words': (resource) => {
    delete resource['valueQuantity'];
    resource['valueString'] = 'usual';
  },
  'no-unit': unit({ unit: undefined }),
  'no-code-of-unit': unit({ code: undefined }),
  'no-system-of-unit': unit({ system: undefined, code: undefined }),
  'no-number': unit({ value: undefined }),
  'unit-of-another-sign': unit({ code: 'mmol/L', unit: 'mmol/L' }),
  'unit-in-other-spelling': unit({ code: 'beats/min', unit: 'beats/min' }),
  'one-component': components((list) => list.slice(0, 1)),
  'a-component-more': components((list) => [...list, pressure('8478-0', 93)]),
  'component-without-value': components(([first, ...rest]) => [{ code: first?.['code'] }, ...rest]),
  'component-in-kpa': components(([first, ...rest]) => [
    { ...first, ...quantity(16, 'kPa') },
    ...rest,
  ]),
  'a-claim': (resource, profile) => {
    resource['meta'] = { profile: [`http://hl7.org/fhir/StructureDefinition/${profile}`] };
  },
  'a-claim-without-time': (resource, profile) => {
    delete resource['effectiveDateTime'];
    resource['meta'] = { profile: [`http://hl7.org/fhir/StructureDefinition/${profile}`] };
  },
  'a-claim-of-vital-signs-for-another-code': (resource) => {
    resource['code'] = { coding: [{ system: LOINC, code: '29545-1' }] };
    resource['meta'] = { profile: ['http://hl7.org/fhir/StructureDefinition/vitalsigns'] };
  },
  'a-claim-of-another-sign': (resource, profile) => {
    const other = profile === 'bmi' ? 'bodyheight' : 'bmi';
    resource['meta'] = { profile: [`http://hl7.org/fhir/StructureDefinition/${other}`] };
  },
};

/** Each code without what its profile asks for; and of each profile the sound one, and its faults. */
export function vitalSignCases(version: FhirRelease): VitalSignCase[] {
  const cases: VitalSignCase[] = [];
  const add = (id: string, resource: Json): void => {
    const text = JSON.stringify(resource);
    const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
    if (!cases.some((one) => one.digest === digest)) cases.push({ id, version, text, digest });
  };
  for (const [profile, [code]] of Object.entries(loincCodes)) {
    // The profiles of the later versions are the same but for two rows.
    if (version !== 'R4' && profile !== 'bp' && profile !== 'bodyweight') continue;
    for (const [name, fault] of Object.entries(faults)) {
      const resource = observation(profile, { system: LOINC, code }, version);
      fault(resource, profile);
      add(`${profile} ${name}`, resource);
    }
  }
  for (const [system, table] of [
    [LOINC, loincCodes],
    [SNOMED, snomedCodes],
  ] as const) {
    for (const [profile, codes] of Object.entries(table)) {
      for (const code of version === 'R4' ? codes : codes.slice(0, 1)) {
        const resource = observation(profile, { system, code }, version);
        delete resource['effectiveDateTime'];
        add(`${profile} ${code} without time`, resource);
      }
    }
  }
  const weight = observation('bodyweight', { system: LOINC, code: '29463-7' }, version);
  delete weight['effectiveDateTime'];
  const fullUrl = 'urn:uuid:5a1c2a0e-5a8e-4c0e-9d6c-0e6f6f0a7c11';
  const bundle = {
    resourceType: 'Bundle',
    type: 'collection',
    entry: [{ fullUrl, resource: weight }],
  };
  add('bodyweight in a bundle without time', bundle);
  const report = {
    resourceType: 'DiagnosticReport',
    status: 'final',
    contained: [{ ...weight, id: 'w' }],
    code: { text: 'Yearly check' },
    result: [{ reference: '#w' }],
  };
  add('bodyweight contained without time', report);
  return cases;
}
