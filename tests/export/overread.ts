import type { CodeableConcept, Observation } from 'fhir/r4.js';
import { type Exam, type ExportOptions, type Statement, toBundleOrThrow } from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';

/**
 * A code of a wider thing says less of what was found, and more of what was not. So nothing that was
 * not found, is not known or was not examined may bear one: the relations of ConceptMap,
 * https://hl7.org/fhir/R4/valueset-concept-map-equivalence.html
 */
export const wider = codesBy((relation) => relation !== 'equivalent');
const equal = codesBy((relation) => relation === 'equivalent');

function codesBy(wanted: (relation: string) => boolean): ReadonlySet<string> {
  const tables: readonly ReadonlyMap<string, object>[] = Object.values(builtInCatalogue);
  const mappings = tables
    .flatMap((table) => [...table.values()])
    .flatMap((row) => ('maps' in row && Array.isArray(row.maps) ? row.maps : []));
  return new Set(mappings.flatMap(({ relation, code }) => (wanted(relation) ? [code] : [])));
}

/** Whether the statement, read by its own fields alone, says that something is there. */
const found: { readonly [K in Statement['kind']]: (of: never) => boolean } = {
  finding: (of: Extract<Statement, { kind: 'finding' }>) =>
    of.presence === 'present' && of.certainty !== 'suspected',
  'region-state': (of: Extract<Statement, { kind: 'region-state' }>) => of.state === 'abnormal',
  sensation: (of: Extract<Statement, { kind: 'sensation' }>) =>
    of.results.some(({ result }) => !usualOrUntested('sensationResults', result)),
  'sensation-comparison': (of: Extract<Statement, { kind: 'sensation-comparison' }>) =>
    of.result === 'right-less' || of.result === 'left-less',
  movement: (of: Extract<Statement, { kind: 'movement' }>) =>
    !usualOrUntested('testResults', of.grade),
  'function-test': (of: Extract<Statement, { kind: 'function-test' }>) =>
    !usualOrUntested('testResults', of.result),
  measurement: (of: Extract<Statement, { kind: 'measurement' }>) => of.value !== undefined,
  'scale-score': () => true,
  symptom: (of: Extract<Statement, { kind: 'symptom' }>) => of.answer === 'yes',
  note: () => true,
  image: () => true,
};

function usualOrUntested(table: 'sensationResults' | 'testResults', code: string): boolean {
  const row = builtInCatalogue[table].get(code);
  return row?.usual === true || row?.untested === true;
}

/** The observations of an exam by the key of their statement. */
export function observationsOf(
  exam: Exam,
  options: ExportOptions,
): ReadonlyMap<string, Observation> {
  const { entry = [] } = toBundleOrThrow(exam, { allowDraft: true, ...options });
  const observations = entry.flatMap(({ resource }) =>
    resource?.resourceType === 'Observation' ? [resource as Observation] : [],
  );
  return new Map(observations.map((one) => [one.identifier?.[0]?.value?.split('|')[1] ?? '', one]));
}

/** Codes of wider things that stand in the code, site or parts of what was not found. */
export function overread(exam: Exam, options: ExportOptions = {}): string[] {
  const observations = observationsOf(exam, options);
  return exam.statements.flatMap((statement) => {
    if (found[statement.kind](statement as never)) return []; // each takes its own kind
    const observation = observations.get(statement.key);
    const parts = (observation?.component ?? []).filter(({ code }) => partIs(code, 'except'));
    const concepts: (CodeableConcept | undefined)[] = [
      observation?.code,
      observation?.bodySite,
      ...parts.map(({ valueCodeableConcept }) => valueCodeableConcept),
    ];
    return concepts
      .flatMap((concept) => concept?.coding ?? [])
      .filter(({ code = '' }) => wider.has(code) && !equal.has(code))
      .map(({ code }) => `${exam.id} ${statement.key} ${code}`);
  });
}

/** How many statements of an exam say that nothing was found. */
export function notFound({ statements }: Exam): number {
  return statements.filter((one) => !found[one.kind](one as never)).length;
}

function partIs({ coding = [] }: CodeableConcept, item: string): boolean {
  return coding.some(({ code }) => code === item);
}
