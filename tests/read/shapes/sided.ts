import {
  bare,
  coded,
  gps,
  hl7,
  observe,
  present,
  SCT,
  sct,
  sideId,
  site,
  siteCode,
  structure,
  tho,
} from './parts.ts';
import type { Shape } from './shape.ts';
/** Where the side stands. */
export const sidedShapes: readonly Shape[] = [
  site('side as mCODE laterality qualifier', 'mCODE 4.0.0 mcode-laterality-qualifier', (one) => ({
    ...bare(one),
    extension: [
      {
        url: 'http://hl7.org/fhir/us/mcode/StructureDefinition/mcode-laterality-qualifier',
        valueCodeableConcept: sct(sideId[one.side]),
      },
    ],
  })),
  {
    name: 'side in a BodyStructure by the extension bodySite',
    publication: 'FHIR R4 example BodyStructure-skin-patch; extension bodySite',
    becomes: present,
    resources: (one) => [
      ...observe(() => ({
        valueBoolean: true,
        bodySite: {
          extension: [{ url: hl7('bodySite'), valueReference: { reference: 'BodyStructure/b1' } }],
        },
      }))(one),
      structure({
        location: bare(one),
        locationQualifier: [
          sct(one.side === 'right' ? '419465000' : '419161000', `Unilateral ${one.side}`),
        ],
      }),
    ],
  },
  {
    name: 'side in Observation.bodyStructure of R5',
    publication: 'FHIR R5 example BodyStructure-skin-patch',
    becomes: present,
    resources: (one) => {
      const [observation] = observe(() => ({ valueBoolean: true }))(one);
      const { bodySite: _, ...rest } = observation as Record<string, unknown>;
      return [
        { ...rest, bodyStructure: { reference: 'BodyStructure/b1' } },
        structure({
          includedStructure: [{ structure: bare(one), laterality: sct(sideId[one.side]) }],
        }),
      ];
    },
  },
  site('side as second coding', 'HL7 v2 table 0495, HL7 Terminology 7.0.1', (one) => ({
    coding: [
      ...(bare(one).coding ?? []),
      { system: tho('v2-0495'), code: one.side === 'right' ? 'R' : 'L' },
    ],
  })),
  site('side as second SNOMED CT coding', gps, (one) => ({
    coding: [...(bare(one).coding ?? []), { system: SCT, code: sideId[one.side] }],
  })),
  site('side in a SNOMED CT expression', 'SNOMED CT compositional grammar', (one) =>
    sct(`${siteCode(one)}:272741003=${sideId[one.side]}`),
  ),
  site(
    'site that is right or left by itself',
    `${gps}: 25577004, 89644007`,
    (one) => (one.side === 'right' ? sct('25577004') : sct('89644007')),
    { region: 'ears' },
  ),
  site(
    'HL7 v2 site OD or OS',
    'HL7 v2 table 0163, HL7 Terminology 7.0.1',
    (one) => coded(tho('v2-0163'), one.side === 'right' ? 'OD' : 'OS'),
    { region: 'globe' },
  ),
  site('side in the text of the site', 'FHIR R4 CodeableConcept.text', (one) => ({
    ...bare(one),
    text: `${one.side} side`,
  })),
];
