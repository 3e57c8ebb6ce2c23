import { snomedDisplay } from '../../../src/terminology/published/snomed.ts';
import {
  coded,
  condition,
  interpretation,
  observe,
  sct,
  sctOf,
  sided,
  signOf,
  tho,
  UCUM,
} from './parts.ts';
import type { Shape } from './shape.ts';
/** What is kept as a note, with an issue. */
export const keptInWords: readonly Shape[] = [
  {
    name: 'text that denies beside a code that asserts',
    publication: 'FHIR R4 CodeableConcept.text: what the user meant',
    becomes: 'note',
    negated: true,
    resources: observe((one) => ({
      code: { ...signOf(one), text: `No ${snomedDisplay(sctOf('findings', one.finding))}` },
      valueBoolean: true,
    })),
  },
  {
    name: 'value Present, interpretation NEG',
    publication: 'v3-ObservationInterpretation',
    becomes: 'note',
    negated: true,
    resources: observe(() => ({
      valueCodeableConcept: sct('52101004'),
      ...interpretation('NEG'),
    })),
  },
  {
    name: 'preliminary in a final exam',
    publication: 'FHIR R4 observation-status',
    becomes: 'note',
    resources: observe(() => ({ status: 'preliminary', valueBoolean: true })),
  },
  {
    name: 'valueString',
    publication: 'FHIR R4 Observation.value[x]',
    becomes: 'note',
    negated: true,
    resources: observe(() => ({ valueString: 'none seen' })),
  },
  {
    name: 'dataAbsentReason',
    publication: 'FHIR R4 data-absent-reason',
    becomes: 'note',
    negated: true,
    resources: observe(() => ({
      dataAbsentReason: coded(tho('data-absent-reason'), 'not-performed', 'Not Performed'),
    })),
  },
  {
    name: 'entry of a problem list',
    publication: 'FHIR R4 condition-category; IPS 2.0.0',
    becomes: 'note',
    resources: (one) =>
      condition(one, { category: [coded(tho('condition-category'), 'problem-list-item')] }),
  },
  {
    name: 'Condition, resolved',
    publication: 'FHIR R4 condition-clinical',
    becomes: 'note',
    negated: true,
    resources: (one) =>
      condition(one, { clinicalStatus: coded(tho('condition-clinical'), 'resolved') }),
  },
  {
    name: 'two sides that disagree',
    publication: 'FHIR R4 extension observation-structureLaterality',
    becomes: 'note',
    resources: observe((one) => ({
      valueBoolean: true,
      bodySite: { ...sided(one), text: one.side === 'right' ? 'left' : 'right' },
    })),
  },
  {
    name: 'a quantity where a sign is asked',
    publication: 'FHIR R4 Observation.value[x]',
    becomes: 'note',
    resources: observe(() => ({
      valueQuantity: { value: 2, unit: 'mm', system: UCUM, code: 'mm' },
    })),
  },
];
