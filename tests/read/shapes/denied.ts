import {
  absent,
  answer,
  coded,
  condition,
  gps,
  interpretation,
  LOINC,
  observe,
  sct,
  tho,
} from './parts.ts';
import type { Shape } from './shape.ts';
/** What says that a finding is not there. */
export const denied: readonly Shape[] = [
  answer('SNOMED CT Absent', gps, absent, sct('2667000', 'Absent')),
  answer('SNOMED CT No', gps, absent, sct('373067005')),
  answer('SNOMED CT Known absent', gps, absent, sct('410516002')),
  answer('SNOMED CT Not detected', gps, absent, sct('260415000', 'Not detected')),
  answer('LOINC answer Absent', 'mCODE 4.0.0 pertinent negative', absent, coded(LOINC, 'LA9634-2')),
  answer('LOINC answer No', 'FHIR R4 example ussg-fht', absent, coded(LOINC, 'LA32-8', 'No')),
  answer('HL7 v2 table 0136 N', 'HL7 table 0136 of FHIR R4', absent, coded(tho('v2-0136'), 'N')),
  {
    name: 'valueBoolean false',
    publication: 'mCODE 4.0.0 example Observation-no-history-of-metastatic-cancer',
    becomes: absent,
    negated: true,
    resources: observe(() => ({ valueBoolean: false })),
  },
  {
    name: 'interpretation NEG, no value',
    publication: 'v3-ObservationInterpretation, definition of NEG',
    becomes: absent,
    negated: true,
    resources: observe(() => interpretation('NEG')),
  },
  {
    name: 'Condition, refuted',
    publication: 'FHIR R4 condition-ver-status',
    becomes: absent,
    negated: true,
    resources: (one) =>
      condition(one, { verificationStatus: coded(tho('condition-ver-status'), 'refuted') }),
  },
];
