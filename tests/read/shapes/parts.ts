import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { snomedDisplay } from '../../../src/terminology/published/snomed.ts';
import type { Becomes, Shape, Told } from './shape.ts';
export const SCT = 'http://snomed.info/sct';
export const LOINC = 'http://loinc.org';
export const UCUM = 'http://unitsofmeasure.org';
export const tho = (name: string): string => `http://terminology.hl7.org/CodeSystem/${name}`;
export const hl7 = (name: string): string => `http://hl7.org/fhir/StructureDefinition/${name}`;

interface Concept {
  readonly coding?: readonly object[];
  readonly text?: string;
  readonly extension?: readonly object[];
}

export function sctOf(table: 'findings' | 'regions', code: string): string {
  const maps = builtInCatalogue[table].get(code)?.maps ?? [];
  const found = maps.find((one) => one.system === 'snomed' && one.relation === 'equivalent');
  if (found === undefined) throw new Error(`${code} has no equivalent code`);
  return found.code;
}

export function coded(system: string, code: string, display?: string): Concept {
  return { coding: [{ system, code, ...(display !== undefined && { display }) }] };
}

export const signOf = ({ finding }: Told): Concept => {
  const code = sctOf('findings', finding);
  return coded(SCT, code, snomedDisplay(code));
};
export const siteCode = ({ region }: Told): string => sctOf('regions', region);
export const bare = (one: Told): Concept => coded(SCT, siteCode(one), snomedDisplay(siteCode(one)));
export const sideId = { right: '24028007', left: '7771000' } as const;

/** The site with the standard extension for the side. */
export const sided = (one: Told): Concept => ({
  ...bare(one),
  extension: [
    {
      url: hl7('observation-structureLaterality'),
      valueCodeableConcept: coded(SCT, sideId[one.side]),
    },
  ],
});

export const base = {
  resourceType: 'Observation',
  id: 'o1',
  status: 'final',
  subject: { reference: 'Patient/3' },
  effectiveDateTime: '2024-03-01',
};

export const observe =
  (parts: (one: Told) => object) =>
  (one: Told): object[] => [{ ...base, code: signOf(one), bodySite: sided(one), ...parts(one) }];

export const present = { presence: 'present' } as const;
export const absent = { presence: 'absent' } as const;
export const sct = (code: string, display?: string): Concept => coded(SCT, code, display);

export function answer(name: string, publication: string, becomes: Becomes, value: Concept): Shape {
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

export function site(
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

export const structure = (parts: object): object => ({
  resourceType: 'BodyStructure',
  id: 'b1',
  active: true,
  patient: { reference: 'Patient/3' },
  ...parts,
});

export const condition = (one: Told, parts: object): object[] => [
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

export const gps = 'SNOMED CT Global Patient Set 2020-09, in HL7 Terminology 7.0.1';
export const interpretation = (code: string): object => ({
  interpretation: [coded(tho('v3-ObservationInterpretation'), code)],
});
