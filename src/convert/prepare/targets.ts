import { type Issue, type IssueCode, issue } from '../../issue.ts';
import type { Side } from '../../model/primitive.ts';
import { nearest } from '../../nearest.ts';
import type { Path } from '../../path.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Laterality } from '../../terminology/types.ts';
import type { Mapping } from '../mapping.ts';
import type { MeasurementTarget, Target } from '../target.ts';
import { tableOf } from './make-plan.ts';

/** What a record can say about a value besides the target itself. */
export interface Supplied {
  readonly side: boolean;
  readonly region: boolean;
  readonly method: boolean;
  readonly modality: boolean;
}

/** Codes that the catalogue does not hold, and what the target leaves open that nothing supplies. */
export function targetIssues(
  target: Target,
  path: Path,
  supplied: Supplied,
  { catalogue, mapping }: { readonly catalogue: Catalogue; readonly mapping: Mapping },
): Issue[] {
  return [
    ...codeUses(target).flatMap(([table, code, property]) =>
      unknownCode(table, code, [...path, property], catalogue),
    ),
    ...sideIssues(target, path, supplied, catalogue),
    ...openIssues(target, path, supplied, mapping),
    ...unitIssues(target, path, catalogue),
  ];
}

type CodeUse = readonly [table: TableName, code: string | undefined, property: string];

function codeUses(target: Target): CodeUse[] {
  const uses: CodeUse[] = [];
  if ('region' in target) uses.push(['regions', target.region, 'region']);
  if ('methods' in target) {
    for (const method of target.methods ?? []) uses.push(['methods', method, 'methods']);
  }
  if ('modality' in target) uses.push(['modalities', target.modality, 'modality']);
  switch (target.kind) {
    case 'finding':
      return [...uses, ['findings', target.finding, 'finding']];
    case 'attribute':
      return [
        ...uses,
        ['findings', target.finding, 'finding'],
        ['attributes', target.attribute, 'attribute'],
      ];
    case 'sensation':
    case 'sensation-comparison':
      return [...uses, ['testPoints', target.point, 'point']];
    case 'movement':
    case 'function-test':
      return [...uses, ['testPoints', target.test, 'test']];
    case 'measurement':
      return [
        ...uses,
        ['measures', target.measure, 'measure'],
        ...(target.conditions ?? []).map(
          (code): CodeUse => ['measureConditions', code, 'conditions'],
        ),
      ];
    case 'scale-score':
      return [...uses, ['scales', target.scale, 'scale']];
    case 'symptom':
      return [...uses, ['symptoms', target.symptom, 'symptom']];
    case 'condition':
      return [...uses, ['conditions', target.condition, 'condition']];
    default:
      return uses;
  }
}

/** An issue where `table` does not hold `code`, with the nearest code that it holds. */
export function unknownCode(
  table: TableName,
  code: string | undefined,
  path: Path,
  catalogue: Catalogue,
): Issue[] {
  const rows = catalogue[table];
  if (code === undefined || rows.has(code)) return [];
  const near = nearest(code, rows.keys());
  const issueCode: IssueCode = table === 'regions' ? 'unknown-region' : 'unknown-code';
  const expected = near === undefined ? `a code of the table ${table}` : `perhaps ${near}`;
  return [issue(issueCode, path, `the table ${table} does not hold this code`, { expected })];
}

function sideIssues(target: Target, path: Path, supplied: Supplied, catalogue: Catalogue): Issue[] {
  const laterality = lateralityOf(target, catalogue);
  if (laterality === undefined || !('side' in target || needsSide(target))) return [];
  const { sides, required } = lateralitySides[laterality];
  const side: Side | undefined = 'side' in target ? target.side : undefined;
  const expected = sides.join(', ');
  if (side !== undefined && !sides.includes(side)) {
    return [
      issue('impossible-side', [...path, 'side'], 'this place can not have that side', {
        expected,
      }),
    ];
  }
  const said = side !== undefined || supplied.side || ('sideFrom' in target && target.sideFrom);
  if (said || !required || !needsSide(target)) return [];
  return [
    issue('missing-side', [...path, 'side'], 'neither the target nor a field says the side', {
      expected,
    }),
  ];
}

function needsSide({ kind }: Target): boolean {
  return (
    kind !== 'note' && kind !== 'symptom' && kind !== 'sensation-comparison' && kind !== 'condition'
  );
}

function lateralityOf(target: Target, catalogue: Catalogue): Laterality | undefined {
  switch (target.kind) {
    case 'sensation':
      return catalogue.testPoints.get(target.point)?.laterality;
    case 'movement':
    case 'function-test':
      return catalogue.testPoints.get(target.test)?.laterality;
    case 'sensation-comparison':
      return undefined;
    case 'measurement': {
      const measure = catalogue.measures.get(target.measure);
      const own = measure?.laterality;
      if (own === 'whole' || own === 'midline') return 'whole';
      return catalogue.regions.get(target.region ?? measure?.region ?? '')?.laterality;
    }
    case 'scale-score':
      return target.region === undefined
        ? catalogue.scales.get(target.scale)?.laterality
        : catalogue.regions.get(target.region)?.laterality;
    default:
      return target.region === undefined
        ? undefined
        : catalogue.regions.get(target.region)?.laterality;
  }
}

/** Region, modality and method: needed, and given by nothing. */
function openIssues(target: Target, path: Path, supplied: Supplied, mapping: Mapping): Issue[] {
  const issues: Issue[] = [];
  const placed = ['finding', 'attribute', 'region-state'].includes(target.kind);
  if (placed && !('region' in target) && !supplied.region) {
    issues.push(
      issue(
        'missing-property',
        [...path, 'region'],
        'neither the target nor a field says the region',
      ),
    );
  }
  const modal = target.kind === 'sensation' || target.kind === 'sensation-comparison';
  if (modal && target.modality === undefined && !supplied.modality) {
    issues.push(
      issue(
        'missing-property',
        [...path, 'modality'],
        'neither the target nor a field says the modality',
      ),
    );
  }
  if (target.kind !== 'region-state') return issues;
  const given = target.methods !== undefined || target.methodFrom !== undefined || supplied.method;
  const meanings = Object.values(tableOf(target.words, mapping) ?? {});
  const examined = meanings.some(
    (meaning) => meaning === 'normal' || meaning === 'abnormal' || isPartial(meaning),
  );
  if (examined && !given) {
    const message =
      'a region can not be called normal or abnormal without saying how it was examined';
    issues.push(issue('missing-method', [...path, 'methods'], message));
  }
  return issues;
}

function isPartial(meaning: unknown): boolean {
  return (
    typeof meaning === 'object' &&
    meaning !== null &&
    'state' in meaning &&
    meaning.state === 'partial'
  );
}

function unitIssues(target: Target, path: Path, catalogue: Catalogue): Issue[] {
  if (target.kind === 'measurement') return measureIssues(target, path, catalogue);
  if (target.kind !== 'scale-score') return [];
  const versions = catalogue.scales.get(target.scale)?.versions ?? [];
  if (versions.length === 0 || versions.includes(target.version)) return [];
  const expected = versions.join(', ');
  return [
    issue('unknown-code', [...path, 'version'], 'this scale does not have that version', {
      expected,
    }),
  ];
}

function measureIssues(target: MeasurementTarget, path: Path, catalogue: Catalogue): Issue[] {
  const measure = catalogue.measures.get(target.measure);
  if (measure === undefined) return [];
  const { rangeOf, scale } = measure;
  if (rangeOf !== undefined || scale !== undefined) {
    const expected = scale === undefined ? `the measure ${rangeOf}` : `the scale ${scale}`;
    return [
      issue('unknown-code', [...path, 'measure'], 'this row is no measure of its own', {
        expected,
      }),
    ];
  }
  const allowed = [measure.unit, ...(measure.units ?? [])];
  if (target.unit === undefined || allowed.includes(target.unit)) return [];
  const expected = allowed.join(', ');
  return [
    issue('wrong-unit', [...path, 'unit'], 'this measure does not take that unit', { expected }),
  ];
}
