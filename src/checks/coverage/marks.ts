import type { Exam } from '../../model/exam.ts';
import type { Side } from '../../model/primitive.ts';
import type {
  Finding,
  FunctionTest,
  Measurement,
  Movement,
  RegionState,
  ScaleScore,
  Sensation,
  Statement,
} from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { coversSide, type OneSide, oneSides } from '../sides.ts';
import { emptyMarks, type MarkMap, markAt, type Place } from './places.ts';

/** Where the exam says something: as covered, or as not done with a reason. */
export interface Marks {
  readonly covered: MarkMap;
  readonly documented: MarkMap;
}

interface Marker extends Marks {
  readonly catalogue: Catalogue;
}

/** A method that takes in another: who looks with a loupe has looked. Common practice, no source. */
const takesIn: ReadonlyMap<string, string> = new Map([
  ['inspection-magnified', 'inspection'],
  ['bimanual-palpation', 'palpation'],
  ['pneumatic-otoscopy', 'otoscopy'],
]);

const movementMethods = ['motor-test', 'function-test'];
const functionMethods = ['function-test', 'reflex'];

export function markExam(exam: Exam, catalogue: Catalogue): Marks {
  const marker: Marker = { catalogue, covered: emptyMarks(), documented: emptyMarks() };
  for (const statement of exam.statements) markStatement(marker, statement);
  return marker;
}

function markStatement(marker: Marker, statement: Statement): void {
  switch (statement.kind) {
    case 'region-state':
      markState(marker, statement);
      break;
    case 'finding':
      markFinding(marker, statement);
      break;
    case 'sensation':
      markSensation(marker, statement);
      break;
    case 'movement':
      markTest(marker, statement, statement.grade, movementMethods);
      break;
    case 'function-test':
      markTest(marker, statement, statement.result, functionMethods);
      break;
    case 'measurement':
      markMeasurement(marker, statement);
      break;
    case 'scale-score':
      markScore(marker, statement);
      break;
    default:
      // A comparison, complaint, note or picture says nothing of what was examined.
      break;
  }
}

function markState(marker: Marker, state: RegionState): void {
  const sides = sidesIn(marker, state.region, state.side);
  const done = state.state === 'normal' || state.state === 'abnormal' || state.state === 'partial';
  for (const side of sides) {
    const place: Place = { kind: 'region', code: state.region, side };
    if (done) cover(marker, place, state, state.state === 'partial');
    else document(marker, place, state);
  }
  if (done)
    markMethods(marker, state.region, sides, state, state.methods, state.state === 'partial');
}

function markFinding(marker: Marker, finding: Finding): void {
  const sides = sidesIn(marker, finding.region, finding.side);
  for (const side of sides) cover(marker, { kind: 'region', code: finding.region, side }, finding);
  markMethods(marker, finding.region, sides, finding, finding.methods ?? []);
}

function markSensation(marker: Marker, sensation: Sensation): void {
  const point = marker.catalogue.testPoints.get(sensation.point);
  const sides = sidesOf(sensation.side, point?.laterality === 'paired');
  for (const { modality, result } of sensation.results) {
    const tested = marker.catalogue.sensationResults.get(result)?.untested !== true;
    for (const side of sides) {
      const place: Place = { kind: 'point', code: sensation.point, side, detail: modality };
      if (tested) cover(marker, place, sensation);
      else document(marker, place, sensation);
    }
    const method = marker.catalogue.modalities.get(modality)?.method;
    if (tested && point !== undefined && method !== undefined) {
      markMethods(marker, point.region, sides, sensation, [method]);
    }
  }
}

function markTest(
  marker: Marker,
  test: Movement | FunctionTest,
  result: string,
  methods: readonly string[],
): void {
  const row = marker.catalogue.testPoints.get(test.test);
  const sides = sidesOf(test.side, row?.laterality === 'paired');
  const tested = marker.catalogue.testResults.get(result)?.untested !== true;
  for (const side of sides) {
    const place: Place = { kind: 'test', code: test.test, side };
    if (tested) cover(marker, place, test);
    else document(marker, place, test);
  }
  if (!tested || row === undefined) return;
  const regionSides = row.laterality === 'paired' ? sides : sidesIn(marker, row.region, 'both');
  const taken = marker.catalogue.regions.get(row.region)?.methods ?? [];
  const used = methods.filter((method) => taken.includes(method));
  markMethods(marker, row.region, regionSides, test, used);
  markAsMeasure(marker, test, sides);
}

/** A few measures are recorded as a test or a score: misting of a mirror, a grade. */
function markAsMeasure(marker: Marker, statement: Statement, sides: readonly Sided[]): void {
  const code = statement.kind === 'scale-score' ? statement.scale : undefined;
  const test = statement.kind === 'function-test' ? statement.test : undefined;
  for (const measure of [code, test]) {
    const row = measure === undefined ? undefined : marker.catalogue.measures.get(measure);
    if (row === undefined || (row.scale ?? row.test) !== measure) continue;
    for (const side of sides) cover(marker, { kind: 'measure', code: row.code, side }, statement);
  }
}

function markMeasurement(marker: Marker, measurement: Measurement): void {
  const sides = sidesIn(marker, measurement.region, measurement.side);
  for (const side of sides) {
    const place: Place = { kind: 'measure', code: measurement.measure, side };
    if (measurement.value !== undefined) cover(marker, place, measurement);
    else document(marker, place, measurement);
  }
  if (measurement.value === undefined) return;
  markMethods(marker, measurement.region, sides, measurement, [
    'measurement',
    ...(measurement.methods ?? []),
  ]);
}

function markScore(marker: Marker, score: ScaleScore): void {
  const laterality = marker.catalogue.scales.get(score.scale)?.laterality;
  markAsMeasure(marker, score, sidesOf(score.side, laterality === 'paired'));
}

/** A method used at a place covers that method there; the place itself is covered by a state or sign. */
function markMethods(
  marker: Marker,
  region: string,
  sides: readonly Sided[],
  statement: Statement,
  methods: readonly string[],
  partial = false,
): void {
  for (const method of methods) {
    const also = takesIn.get(method);
    for (const side of sides) {
      cover(marker, { kind: 'method', code: region, side, detail: method }, statement, partial);
      if (also !== undefined) {
        cover(marker, { kind: 'method', code: region, side, detail: also }, statement, partial);
      }
    }
  }
}

function cover(marker: Marker, place: Place, statement: Statement, partial = false): void {
  // Taken over from an earlier exam and not looked at again: said, and not examined.
  if (statement.carried?.confirmed === false) {
    document(marker, place, statement);
    return;
  }
  const mark = markAt(marker.covered, place);
  if (mark.keys.at(-1) !== statement.key) mark.keys.push(statement.key);
  // Whole beats part: what one statement left out another has covered.
  mark.partial &&= partial;
}

function document(marker: Marker, place: Place, statement: Statement): void {
  const { keys } = markAt(marker.documented, place);
  if (keys.at(-1) !== statement.key) keys.push(statement.key);
}

type Sided = OneSide | undefined;

function sidesIn(marker: Marker, region: string, side: Side | undefined): readonly Sided[] {
  const laterality = marker.catalogue.regions.get(region)?.laterality;
  return sidesOf(side, laterality === 'paired' || laterality === 'crossing');
}

/** Sides that a statement speaks of; without a side it speaks of a pair only where there is none. */
function sidesOf(side: Side | undefined, sided: boolean): readonly Sided[] {
  if (side === undefined) return sided ? [undefined] : [undefined, ...oneSides];
  if (side === 'midline') return [undefined];
  return [undefined, ...oneSides.filter((one) => coversSide(side, one))];
}
