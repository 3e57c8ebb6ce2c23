import { coded, condition, observe, signOf, tho } from './parts.ts';
import type { Shape } from './shape.ts';
/** What is refused, with an issue. */
export const notRead: readonly Shape[] = [
  {
    name: 'modifierExtension',
    publication: 'FHIR R4 extensibility, modifierExtension',
    becomes: 'refused',
    negated: true,
    resources: observe(() => ({
      valueBoolean: true,
      modifierExtension: [{ url: 'http://example.org/fhir/negated', valueBoolean: true }],
    })),
  },
  {
    name: 'implicitRules',
    publication: 'FHIR R4 Resource.implicitRules',
    becomes: 'refused',
    negated: true,
    resources: observe(() => ({ valueBoolean: true, implicitRules: 'http://example.org/rules' })),
  },
  {
    name: 'focus on the mother',
    publication: 'FHIR R4 Observation.focus',
    becomes: 'refused',
    negated: true,
    resources: observe(() => ({
      valueBoolean: true,
      focus: [{ reference: 'RelatedPerson/mother' }],
    })),
  },
  {
    name: 'entered in error',
    publication: 'FHIR R4 observation-status',
    becomes: 'refused',
    negated: true,
    resources: observe(() => ({ valueBoolean: true, status: 'entered-in-error' })),
  },
  {
    name: 'Condition entered in error',
    publication: 'FHIR R4 condition-ver-status',
    becomes: 'refused',
    negated: true,
    resources: (one) =>
      condition(one, {
        clinicalStatus: undefined,
        verificationStatus: coded(tho('condition-ver-status'), 'entered-in-error'),
      }),
  },
  {
    name: 'FamilyMemberHistory',
    publication: 'FHIR R4 example FamilyMemberHistory-father',
    becomes: 'refused',
    negated: true,
    unsided: true,
    resources: (one) => [
      {
        resourceType: 'FamilyMemberHistory',
        id: 'f1',
        status: 'completed',
        patient: { reference: 'Patient/3' },
        relationship: coded(tho('v3-RoleCode'), 'FTH'),
        condition: [{ code: signOf(one) }],
      },
    ],
  },
];
