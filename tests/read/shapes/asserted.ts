import {
  answer,
  base,
  coded,
  condition,
  gps,
  interpretation,
  LOINC,
  observe,
  present,
  sct,
  signOf,
  tho,
} from './parts.ts';
import type { Shape } from './shape.ts';
/** What says that a finding is there, or may be. */
export const asserted: readonly Shape[] = [
  answer('SNOMED CT Present', gps, present, sct('52101004', 'Present')),
  answer('SNOMED CT Yes', 'FHIR R4 example Observation-secondsmoke', present, sct('373066001')),
  answer('SNOMED CT Positive', 'FHIR R4 example Observation-vp-oyster', present, sct('10828004')),
  answer('SNOMED CT Detected', gps, present, sct('260373001')),
  answer(
    'SNOMED CT Confirmed present',
    gps,
    { presence: 'present', certainty: 'confirmed' },
    sct('410605003'),
  ),
  answer(
    'SNOMED CT Suspected',
    gps,
    { presence: 'present', certainty: 'suspected' },
    sct('415684004', 'Suspected'),
  ),
  answer('SNOMED CT Indeterminate', gps, { presence: 'indeterminate' }, sct('82334004')),
  answer('LOINC answer Present', 'mCODE 4.0.0 genomic example', present, coded(LOINC, 'LA9633-4')),
  answer('LOINC answer Yes', 'FHIR R4 example ussg-fht', present, coded(LOINC, 'LA33-6', 'Yes')),
  answer('HL7 v2 table 0136 Y', 'HL7 table 0136 of FHIR R4', present, coded(tho('v2-0136'), 'Y')),
  answer('HL7 v2 table 0532 Y', 'HL7 Terminology 7.0.1', present, coded(tho('v2-0532'), 'Y')),
  {
    name: 'valueBoolean true, interpretation A',
    publication: 'FHIR R4 example Observation-abdo-tender',
    becomes: present,
    resources: observe(() => ({ valueBoolean: true, ...interpretation('A') })),
  },
  {
    name: 'finding as code, no value',
    publication: 'mCODE 4.0.0 example Observation-cancer-related-comorbidities',
    becomes: present,
    resources: observe(() => ({})),
  },
  {
    name: 'ASSERTION with the finding as value',
    publication: 'v3-ActCode ASSERTION; AU Base assertion of no relevant finding',
    becomes: present,
    resources: observe((one) => ({
      code: coded(tho('v3-ActCode'), 'ASSERTION'),
      valueCodeableConcept: signOf(one),
    })),
  },
  {
    name: 'LOINC 29545-1 with the finding as value',
    publication: 'LOINC 29545-1 Physical findings, FHIR R4 document section codes',
    becomes: present,
    resources: observe((one) => ({
      code: coded(LOINC, '29545-1', 'Physical findings Narrative'),
      valueCodeableConcept: signOf(one),
    })),
  },
  {
    name: 'component of a panel',
    publication: 'FHIR R4 Observation.component; example Observation-example-genetics',
    becomes: present,
    resources: observe((one) => ({
      code: coded(LOINC, '10206-1', 'Physical findings of Skin Narrative'),
      component: [{ code: signOf(one), valueCodeableConcept: coded(LOINC, 'LA9633-4') }],
    })),
  },
  {
    name: 'member of a panel',
    publication: 'FHIR R4 Observation.hasMember; example Observation-bgpanel',
    becomes: present,
    resources: (one) => [
      {
        ...base,
        id: 'p1',
        code: coded(LOINC, '29545-1', 'Physical findings Narrative'),
        hasMember: [{ reference: 'Observation/o1' }],
      },
      ...observe(() => ({ valueBoolean: true }))(one),
    ],
  },
  {
    name: 'Condition, confirmed',
    publication: 'FHIR R4 Condition, example Condition-f202',
    becomes: { presence: 'present', certainty: 'confirmed' },
    resources: (one) => condition(one, {}),
  },
  {
    name: 'Condition, provisional',
    publication: 'FHIR R4 condition-ver-status',
    becomes: { presence: 'present', certainty: 'suspected' },
    resources: (one) =>
      condition(one, { verificationStatus: coded(tho('condition-ver-status'), 'provisional') }),
  },
];
