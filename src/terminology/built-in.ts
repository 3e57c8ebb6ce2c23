import { attributes } from './tables/attributes.ts';
import { conditions } from './tables/conditions.ts';
import { findings } from './tables/findings.ts';
import { instruments } from './tables/instruments.ts';
import { items } from './tables/items.ts';
import { measureConditions } from './tables/measure-conditions.ts';
import { measures } from './tables/measures.ts';
import { methods } from './tables/methods.ts';
import { modalities } from './tables/modalities.ts';
import { negatives } from './tables/negatives.ts';
import { protocols } from './tables/protocols.ts';
import { reasons } from './tables/reasons.ts';
import { regions } from './tables/regions.ts';
import { scales } from './tables/scales.ts';
import { sections } from './tables/sections.ts';
import { sensationResults } from './tables/sensation-results.ts';
import { services } from './tables/services.ts';
import { symptoms } from './tables/symptoms.ts';
import { testPoints } from './tables/test-points.ts';
import { testResults } from './tables/test-results.ts';
import { values } from './tables/values.ts';
import type {
  AttributeConcept,
  Concept,
  Condition,
  FindingConcept,
  Lean,
  Measure,
  Modality,
  NegativeSet,
  Protocol,
  ReasonConcept,
  Region,
  ResultConcept,
  Scale,
  Section,
  SymptomConcept,
  TestPoint,
} from './types.ts';

/** Row type of each table, by table name. A new table is a line here and one below. */
export interface TableRows {
  readonly sections: Lean<Section>;
  readonly regions: Lean<Region>;
  readonly findings: Lean<FindingConcept>;
  readonly attributes: Lean<AttributeConcept>;
  readonly testPoints: Lean<TestPoint>;
  readonly testResults: Lean<ResultConcept>;
  readonly modalities: Lean<Modality>;
  readonly sensationResults: Lean<ResultConcept>;
  readonly measures: Lean<Measure>;
  readonly measureConditions: Lean<Concept>;
  readonly scales: Lean<Scale>;
  readonly methods: Lean<Concept>;
  readonly instruments: Lean<Concept>;
  readonly reasons: Lean<ReasonConcept>;
  readonly conditions: Lean<Condition>;
  readonly services: Lean<Concept>;
  readonly symptoms: Lean<SymptomConcept>;
  readonly negatives: Lean<NegativeSet>;
  readonly protocols: Lean<Protocol>;
  readonly items: Lean<Concept>;
  readonly values: Lean<Concept>;
}

export type TableName = keyof TableRows;

/** The tables generated from /terminology. */
export const builtInTables: { readonly [Name in TableName]: readonly TableRows[Name][] } = {
  sections,
  regions,
  findings,
  attributes,
  testPoints,
  testResults,
  modalities,
  sensationResults,
  measures,
  measureConditions,
  scales,
  methods,
  instruments,
  reasons,
  conditions,
  services,
  symptoms,
  negatives,
  protocols,
  items,
  values,
};
