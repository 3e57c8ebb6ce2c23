import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { snomedDisplay } from '../../src/terminology/published/snomed.ts';

/**
 * Findings of others in the shapes that are published for them. What the finding is comes from the
 * mapping tables; each shape names the publication that has it.
 */

const SCT = 'http://snomed.info/sct';
const LOINC = 'http://loinc.org';
const UCUM = 'http://unitsofmeasure.org';
const tho = (name: string): string => `http://terminology.hl7.org/CodeSystem/${name}`;
const hl7 = (name: string): string => `http://hl7.org/fhir/StructureDefinition/${name}`;

export interface Told {
  readonly finding: string;
  readonly region: string;
  readonly side: 'right' | 'left';
}

const places: readonly (readonly [string, string])[] = [
  ['skin-moisture.dry', 'temple'],
  ['scar', 'forehead'],
  ['rash', 'lid-upper'],
  ['erythema', 'temple'],
  ['papule', 'nasolabial'],
  ['pustule', 'chin'],
  ['nodule', 'eyebrow'],
  ['skin-ulcer', 'lip-lower'],
  ['actinic-keratosis', 'jawline'],
  ['acne', 'preauricular'],
  ['hair-loss', 'eyebrow'],
  ['facial-swelling', 'temple'],
  ['keloid', 'mastoid-skin'],
  ['purpura', 'eyebrow'],
  ['petechiae', 'lid-lower'],
  ['skin-tag', 'neck-lat-skin'],
  ['comedones', 'nose-ala'],
  ['naevus', 'nose-sidewall'],
  ['hyperpigmentation', 'supraclav-skin'],
  ['wheal', 'temple'],
  ['tender', 'parotid'],
  ['jaundice', 'forehead'],
  ['solar-lentigo', 'temple'],
  ['epidermoid-cyst', 'lip-upper'],
];

export const told: readonly Told[] = places.map(([finding, region], at) => ({
  finding,
  region,
  side: at % 2 === 0 ? 'right' : 'left',
}));

/** What a shape must come to. `note` and `refused` always with an issue. */
export type Becomes =
  | { readonly presence: 'present' | 'absent' | 'indeterminate'; readonly certainty?: string }
  | 'note'
  | 'refused';

export interface Shape {
  readonly name: string;
  /** Where the shape, or each of its codes, is published. */
  readonly publication: string;
  readonly becomes: Becomes;
  /** The source denies the finding, or does not assert it of this patient. */
  readonly negated?: true;
  /** The side is not in the source. */
  readonly unsided?: true;
  /** Region where the site of the shape names another than that of the finding. */
  readonly region?: string;
  readonly resources: (one: Told) => readonly object[];
}

interface Concept {
  readonly coding?: readonly object[];
  readonly text?: string;
  readonly extension?: readonly object[];
}

function sctOf(table: 'findings' | 'regions', code: string): string {
  const maps = builtInCatalogue[table].get(code)?.maps ?? [];
  const found = maps.find((one) => one.system === 'snomed' && one.relation === 'equivalent');
  if (found === undefined) throw new Error(`${code} has no equivalent code`);
  return found.code;
}

function coded(system: string, code: string, display?: string): Concept {
  return { coding: [{ system, code, ...(display !== undefined && { display }) }] };
}

const signOf = ({ finding }: Told): Concept => {
  const code = sctOf('findings', finding);
  return coded(SCT, code, snomedDisplay(code));
};
const siteCode = ({ region }: Told): string => sctOf('regions', region);
const bare = (one: Told): Concept => coded(SCT, siteCode(one), snomedDisplay(siteCode(one)));
const sideId = { right: '24028007', left: '7771000' } as const;

/** The site with the standard extension for the side. */
const sided = (one: Told): Concept => ({
  ...bare(one),
  extension: [
    {
      url: hl7('observation-structureLaterality'),
      valueCodeableConcept: coded(SCT, sideId[one.side]),
    },
  ],
});

const base = {
  resourceType: 'Observation',
  id: 'o1',
  status: 'final',
  subject: { reference: 'Patient/3' },
  effectiveDateTime: '2024-03-01',
};

const observe =
  (parts: (one: Told) => object) =>
  (one: Told): object[] => [{ ...base, code: signOf(one), bodySite: sided(one), ...parts(one) }];

const present = { presence: 'present' } as const;
const absent = { presence: 'absent' } as const;
const sct = (code: string, display?: string): Concept => coded(SCT, code, display);

function answer(name: string, publication: string, becomes: Becomes, value: Concept): Shape {
  return {
    name,
    publication,
    becomes,
    ...(becomes !== 'note' && becomes !== 'refused' && becomes.presence === 'absent'
      ? { negated: true as const }
      : {}),
    resources: observe(() => ({ valueCodeableConcept: value })),
  };
}

function site(
  name: string,
  publication: string,
  bodySite: (one: Told) => object,
  further: Partial<Shape> = {},
): Shape {
  return {
    name,
    publication,
    becomes: present,
    resources: observe((one) => ({ valueBoolean: true, bodySite: bodySite(one) })),
    ...further,
  };
}

const structure = (parts: object): object => ({
  resourceType: 'BodyStructure',
  id: 'b1',
  active: true,
  patient: { reference: 'Patient/3' },
  ...parts,
});

const condition = (one: Told, parts: object): object[] => [
  {
    resourceType: 'Condition',
    id: 'c1',
    clinicalStatus: coded(tho('condition-clinical'), 'active'),
    verificationStatus: coded(tho('condition-ver-status'), 'confirmed'),
    category: [coded(tho('condition-category'), 'encounter-diagnosis')],
    code: signOf(one),
    bodySite: [sided(one)],
    subject: { reference: 'Patient/3' },
    recordedDate: '2024-03-01',
    ...parts,
  },
];

const gps = 'SNOMED CT Global Patient Set 2020-09, in HL7 Terminology 7.0.1';
const interpretation = (code: string): object => ({
  interpretation: [coded(tho('v3-ObservationInterpretation'), code)],
});

export const shapes: readonly Shape[] = [
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
  // What denies
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
  // What is kept in words
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
  // What is not read
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
