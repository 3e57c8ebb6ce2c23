import { ACT_CODE, LOINC, SNOMED } from '../../fhir/names/systems.ts';
import type { Side } from '../../model/primitive.ts';

/** A code that others publish, and what it means to the reader. */
export interface PublishedCode<M> {
  readonly system: string;
  readonly code: string;
  /** Name in the package below, without the kind of concept in brackets. */
  readonly display: string;
  readonly means: M;
  /** Published package and file that hold code and name; tests/published reads them again. */
  readonly source: string;
}

export type Answer = 'present' | 'absent' | 'indeterminate' | 'suspected' | 'confirmed';

const V2_0532 = 'http://terminology.hl7.org/CodeSystem/v2-0532';
const V2_0136 = 'http://terminology.hl7.org/CodeSystem/v2-0136';
const V2_0495 = 'http://terminology.hl7.org/CodeSystem/v2-0495';
const V2_0163 = 'http://terminology.hl7.org/CodeSystem/v2-0163';
const ACT_SITE = 'http://terminology.hl7.org/CodeSystem/v3-ActSite';

const gps = 'hl7.terminology.r4@7.0.1 ValueSet-snomed-intl-gps.json';
const thoTable = (name: string): string => `hl7.terminology.r4@7.0.1 CodeSystem-${name}.json`;
const r4Codes = (name: string): string => `hl7.fhir.r4.examples@4.0.1 CodeSystem-${name}.json`;
const mcode = (name: string): string => `hl7.fhir.us.mcode@4.0.0 example/${name}.json`;

function rows<M>(
  system: string,
  source: string,
  ...codes: readonly (readonly [string, string, M])[]
): PublishedCode<M>[] {
  return codes.map(([code, display, means]) => ({ system, code, display, means, source }));
}

/**
 * Answers that say whether a sign is there. Not among them is what only says that nobody knows
 * (unknown, not asked, not applicable): such an answer makes no finding.
 */
export const answers: readonly PublishedCode<Answer>[] = [
  ...rows<Answer>(
    SNOMED,
    gps,
    ['52101004', 'Present', 'present'],
    ['373066001', 'Yes', 'present'],
    ['10828004', 'Positive', 'present'],
    ['260373001', 'Detected', 'present'],
    ['410605003', 'Confirmed present', 'confirmed'],
    ['410592001', 'Probably present', 'suspected'],
    ['415684004', 'Suspected', 'suspected'],
    ['2667000', 'Absent', 'absent'],
    ['410516002', 'Known absent', 'absent'],
    ['373067005', 'No', 'absent'],
    ['260385009', 'Negative', 'absent'],
    ['260415000', 'Not detected', 'absent'],
    ['82334004', 'Indeterminate', 'indeterminate'],
    ['373068000', 'Undetermined', 'indeterminate'],
  ),
  ...rows<Answer>(
    V2_0532,
    thoTable('v2-0532'),
    ['Y', 'Yes', 'present'],
    ['N', 'No', 'absent'],
    ['NP', 'not present', 'absent'],
  ),
  ...rows<Answer>(V2_0136, r4Codes('v2-0136'), ['Y', 'Yes', 'present'], ['N', 'No', 'absent']),
  ...rows<Answer>(
    LOINC,
    'hl7.fhir.r4.examples@4.0.1 Bundle-ussg-fht.json',
    ['LA33-6', 'Yes', 'present'],
    ['LA32-8', 'No', 'absent'],
  ),
  ...rows<Answer>(
    LOINC,
    mcode('Bundle-mcode-patient-bundle-jenny-m'),
    ['LA9633-4', 'Present', 'present'],
    ['LA6576-8', 'Positive', 'present'],
    ['LA6577-6', 'Negative', 'absent'],
  ),
  ...rows<Answer>(LOINC, mcode('Observation-gx-genomic-variant-pertinent-negative-nras-kit-braf'), [
    'LA9634-2',
    'Absent',
    'absent',
  ]),
];

/** What was found, or a judgement of it. */
export type Interpretation = 'present' | 'absent' | 'indeterminate' | 'normal' | 'abnormal';

/** What an interpretation says of a sign, by code of v3-ObservationInterpretation; the rest is not understood. */
export const interpretations: readonly PublishedCode<Interpretation>[] = rows<Interpretation>(
  'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation',
  thoTable('v3-ObservationInterpretation'),
  ['POS', 'Positive', 'present'],
  ['DET', 'Detected', 'present'],
  ['A', 'Abnormal', 'abnormal'],
  ['AA', 'Critical abnormal', 'abnormal'],
  ['NEG', 'Negative', 'absent'],
  ['ND', 'Not detected', 'absent'],
  ['N', 'Normal', 'normal'],
  ['IND', 'Indeterminate', 'indeterminate'],
  ['E', 'Equivocal', 'indeterminate'],
);

const physical = 'hl7.fhir.r4.expansions@4.0.1 ValueSet-doc-section-codes.json';
const physicalBySystem = 'hl7.fhir.r4.expansions@4.0.1 ValueSet-consent-content-code.json';

/** Questions whose coded answer is the finding itself: the value is then what is asserted. */
export const assertions: readonly PublishedCode<true>[] = [
  ...rows<true>(ACT_CODE, r4Codes('v3-ActCode'), ['ASSERTION', 'Assertion', true]),
  ...rows<true>(SNOMED, gps, ['404684003', 'Clinical finding', true]),
  ...rows<true>(LOINC, physical, ['29545-1', 'Physical findings Narrative', true]),
  ...rows<true>(
    LOINC,
    physicalBySystem,
    ['10210-3', 'Physical findings of General status Narrative', true],
    ['10199-8', 'Physical findings of Head Narrative', true],
    ['10197-2', 'Physical findings of Eye Narrative', true],
    ['10195-6', 'Physical findings of Ear Narrative', true],
    ['10203-8', 'Physical findings of Nose Narrative', true],
    ['10206-1', 'Physical findings of Skin Narrative', true],
  ),
];

/** Qualifiers of a site that say its side. */
export const sideCodes: readonly PublishedCode<Side>[] = [
  ...rows<Side>(
    SNOMED,
    gps,
    ['24028007', 'Right', 'right'],
    ['7771000', 'Left', 'left'],
    ['51440002', 'Right and left', 'both'],
    ['260528009', 'Median', 'midline'],
  ),
  ...rows<Side>(
    SNOMED,
    'hl7.fhir.r4.examples@4.0.1 Bundle-valueset-expansions.json',
    ['419465000', 'Unilateral right', 'right'],
    ['419161000', 'Unilateral left', 'left'],
  ),
  ...rows<Side>(SNOMED, 'hl7.fhir.us.mcode@4.0.0 ValueSet-mcode-laterality-qualifier-vs.json', [
    '399488007',
    'Midline',
    'midline',
  ]),
  ...rows<Side>(
    V2_0495,
    thoTable('v2-0495'),
    ['R', 'Right', 'right'],
    ['L', 'Left', 'left'],
    ['BIL', 'Bilateral', 'both'],
  ),
];

/** A place that names its own side. `narrower`: it is only a part of our region. */
export interface SidedSite {
  readonly region: string;
  readonly side: Side;
  readonly narrower?: true;
}

const at = (region: string, side: Side, narrower?: true): SidedSite => ({
  region,
  side,
  ...(narrower && { narrower }),
});

const names = (version: 'v2' | 'v3'): [string, string, SidedSite][] => {
  const big = version === 'v2';
  const name = (text: string): string => (big ? text : text.toLowerCase());
  return [
    ['OD', name('Right Eye'), at('globe', 'right')],
    ['OS', name('Left Eye'), at('globe', 'left')],
    ['OU', name('Bilateral Eyes'), at('globe', 'both')],
    ['RE', name('Right Ear'), at('ears', 'right')],
    ['LE', name('Left Ear'), at('ears', 'left')],
    ['BE', name('Bilateral Ears'), at('ears', 'both')],
    ['RN', name('Right Naris'), at('vestibule', 'right')],
    ['LN', name('Left Naris'), at('vestibule', 'left')],
    ['BN', name('Bilateral Nares'), at('vestibule', 'both')],
  ];
};

/** Sites that are right or left by themselves. */
export const sidedSites: readonly PublishedCode<SidedSite>[] = [
  ...rows<SidedSite>(
    SNOMED,
    gps,
    ['25577004', 'Right ear structure', at('ears', 'right')],
    ['89644007', 'Left ear structure', at('ears', 'left')],
    ['362502000', 'Entire right eye', at('globe', 'right')],
    ['362503005', 'Entire left eye', at('globe', 'left')],
    ['40638003', 'Structure of both eyes', at('globe', 'both')],
    ['362508001', 'Both eyes, entire', at('globe', 'both')],
    ['29565003', 'Structure of right lobe of thyroid gland', at('thyroid-lobe', 'right')],
    ['79163004', 'Structure of left lobe of thyroid gland', at('thyroid-lobe', 'left')],
    ['65355003', 'Right common carotid artery structure', at('carotid', 'right', true)],
    ['113263003', 'Left common carotid artery structure', at('carotid', 'left', true)],
    ['79718009', 'Structure of right carotid sinus', at('carotid', 'right', true)],
    ['9775002', 'Structure of left carotid sinus', at('carotid', 'left', true)],
  ),
  ...rows<SidedSite>(V2_0163, thoTable('v2-0163'), ...names('v2')),
  ...rows<SidedSite>(ACT_SITE, thoTable('v3-ActSite'), ...names('v3')),
];

/**
 * Extensions on a body site that hold its side as a CodeableConcept.
 * @see http://hl7.org/fhir/us/mcode/STU4/StructureDefinition-mcode-laterality-qualifier.html
 */
export const sideExtensions: readonly string[] = [
  'http://hl7.org/fhir/StructureDefinition/observation-structureLaterality',
  'http://hl7.org/fhir/us/mcode/StructureDefinition/mcode-laterality-qualifier',
];

/** SNOMED CT attribute that refines a site by its side, in a compositional expression: `site : 272741003 = side`. */
export const lateralityAttribute: PublishedCode<true> = {
  system: SNOMED,
  code: '272741003',
  display: 'Laterality',
  means: true,
  source: gps,
};

/** Finds what a coding means in one of the lists above. */
export function meaningIn<M>(
  list: readonly PublishedCode<M>[],
): (system: unknown, code: unknown) => M | undefined {
  const index = new Map(list.map((row) => [`${row.system}|${row.code}`, row.means]));
  return (system, code) =>
    typeof system === 'string' && typeof code === 'string'
      ? index.get(`${system}|${code}`)
      : undefined;
}
