/**
 * What the tables in /terminology may hold, as data: properties by table, and which of them name
 * rows of other tables. The types in src/terminology/types.ts say the same to the compiler.
 */

/** `?` after a name: optional. A nested shape is a list of objects. */
export type Kind = 'text' | 'texts' | 'true' | 'integer' | 'decimal' | 'evidence' | Shape;
export interface Shape {
  readonly [property: string]: Kind;
}

const maps = { system: 'text', code: 'text', relation: 'text' } as const;
const concept = {
  code: 'text',
  display: 'text',
  'definition?': 'text',
  'maps?': maps,
  source: 'text',
  evidence: 'evidence',
} as const;
const value = { code: 'text', display: 'text', 'usual?': 'true', 'maps?': maps } as const;
const sited = { region: 'text', laterality: 'text' } as const;
const pointUse = { point: 'text', modalities: 'texts' } as const;
const range = {
  'low?': 'decimal',
  'high?': 'decimal',
  'text?': 'text',
  population: 'text',
  source: 'text',
  evidence: 'evidence',
} as const;

/** How a table is emitted: name of the constant and its row type. */
export interface TableShape {
  readonly constant: string;
  readonly rowType: string;
  readonly shape: Shape;
  /** Path in a row and the table whose codes it must name. */
  readonly references?: readonly (readonly [path: string, table: string])[];
}

export const tableShapes: { readonly [table: string]: TableShape } = {
  sections: {
    constant: 'sections',
    rowType: 'Section',
    shape: { ...concept, order: 'integer' },
  },
  regions: {
    constant: 'regions',
    rowType: 'Region',
    shape: {
      ...concept,
      'parent?': 'text',
      section: 'text',
      laterality: 'text',
      'group?': 'true',
      'innervation?': 'text',
      'areas?': 'texts',
      methods: 'texts',
    },
    references: [
      ['parent', 'regions'],
      ['section', 'sections'],
      ['methods', 'methods'],
    ],
  },
  findings: {
    constant: 'findings',
    rowType: 'FindingConcept',
    shape: {
      ...concept,
      regions: 'texts',
      'feature?': 'text',
      'usual?': 'true',
      'attributes?': 'text',
      'disorder?': 'true',
    },
    references: [['regions', 'regions']],
  },
  attributes: {
    constant: 'attributes',
    rowType: 'AttributeConcept',
    shape: { ...concept, family: 'text', type: 'text', 'values?': value, 'unit?': 'text' },
    references: [['unit', 'units']],
  },
  'test-points': {
    constant: 'testPoints',
    rowType: 'TestPoint',
    shape: {
      ...concept,
      ...sited,
      group: 'text',
      section: 'text',
      'nerve?': 'text',
      'areas?': 'texts',
      'modalities?': 'texts',
      'results?': 'texts',
      'instruction?': 'text',
    },
    references: [
      ['section', 'sections'],
      ['region', 'regions'],
      ['modalities', 'modalities'],
      ['results', 'test-results'],
    ],
  },
  'test-results': {
    constant: 'testResults',
    rowType: 'ResultConcept',
    shape: { ...concept, 'usual?': 'true', 'untested?': 'true' },
  },
  modalities: {
    constant: 'modalities',
    rowType: 'Modality',
    shape: { ...concept, method: 'text' },
    references: [['method', 'methods']],
  },
  'sensation-results': {
    constant: 'sensationResults',
    rowType: 'ResultConcept',
    shape: { ...concept, 'usual?': 'true', 'untested?': 'true', 'modalities?': 'texts' },
    references: [['modalities', 'modalities']],
  },
  measures: {
    constant: 'measures',
    rowType: 'Measure',
    shape: {
      ...concept,
      ...sited,
      type: 'text',
      unit: 'text',
      'units?': 'texts',
      'ranges?': range,
      'threshold?': 'text',
      'rangeOf?': 'text',
      'scale?': 'text',
      'test?': 'text',
      'values?': value,
    },
    references: [
      ['region', 'regions'],
      ['unit', 'units'],
      ['units', 'units'],
      ['rangeOf', 'measures'],
      ['scale', 'scales'],
      ['test', 'test-points'],
    ],
  },
  'measure-conditions': {
    constant: 'measureConditions',
    rowType: 'Concept',
    shape: concept,
  },
  scales: {
    constant: 'scales',
    rowType: 'Scale',
    shape: {
      ...concept,
      ...sited,
      versions: 'texts',
      type: 'text',
      'grades?': { ...value, rank: 'integer', definition: 'text' },
      'items?': { ...value, weight: 'integer', 'max?': 'integer' },
      'max?': 'integer',
      licence: 'text',
    },
    references: [['region', 'regions']],
  },
  methods: { constant: 'methods', rowType: 'Concept', shape: concept },
  instruments: {
    constant: 'instruments',
    rowType: 'Concept',
    shape: concept,
  },
  reasons: {
    constant: 'reasons',
    rowType: 'ReasonConcept',
    shape: { ...concept, dataAbsentReason: 'text' },
  },
  conditions: {
    constant: 'conditions',
    rowType: 'Condition',
    shape: { ...concept, 'values?': value },
  },
  symptoms: {
    constant: 'symptoms',
    rowType: 'SymptomConcept',
    shape: { ...concept, group: 'text', section: 'text' },
    references: [['section', 'sections']],
  },
  negatives: {
    constant: 'negatives',
    rowType: 'NegativeSet',
    shape: {
      ...concept,
      section: 'text',
      entries: { finding: 'text', regions: 'texts' },
      'comparisons?': pointUse,
      'tests?': { test: 'text', result: 'text' },
    },
    references: [
      ['section', 'sections'],
      ['entries.finding', 'findings'],
      ['entries.regions', 'regions'],
      ['comparisons.point', 'test-points'],
      ['comparisons.modalities', 'modalities'],
      ['tests.test', 'test-points'],
      ['tests.result', 'test-results'],
    ],
  },
  protocols: {
    constant: 'protocols',
    rowType: 'Protocol',
    shape: {
      ...concept,
      version: 'text',
      regions: { region: 'text', methods: 'texts' },
      'everyRegionBut?': 'texts',
      'points?': pointUse,
      'tests?': 'texts',
      'measures?': 'texts',
      'outside?': 'texts',
    },
    references: [
      ['regions.region', 'regions'],
      ['regions.methods', 'methods'],
      ['everyRegionBut', 'regions'],
      ['points.point', 'test-points'],
      ['points.modalities', 'modalities'],
      ['tests', 'test-points'],
      ['measures', 'measures'],
    ],
  },
  services: { constant: 'services', rowType: 'Concept', shape: concept },
  items: { constant: 'items', rowType: 'Concept', shape: concept },
  values: { constant: 'values', rowType: 'Concept', shape: concept },
  snomed: {
    constant: 'snomedConcepts',
    rowType: 'SnomedConcept',
    shape: { id: 'text', fsn: 'text', 'synonym?': 'true', set: 'text', source: 'text' },
  },
  loinc: {
    constant: 'loincTerms',
    rowType: 'LoincTerm',
    shape: { code: 'text', 'display?': 'text', source: 'text' },
  },
  hl7: {
    constant: 'hl7Concepts',
    rowType: 'Hl7Concept',
    shape: { system: 'text', code: 'text', display: 'text' },
  },
};
