import type { Issue } from '../../issues/issue.ts';
import { nearest } from '../../issues/nearest.ts';
import type { Path } from '../../issues/path.ts';
import type {
  CodeUse,
  Prepared,
  Supplied,
  TargetConversion,
} from '../../kinds/facets/conversion.ts';
import { targetConversion } from '../../kinds/registries/conversions.ts';
import type { Side } from '../../model/primitive.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Laterality } from '../../terminology/types.ts';
import { issue } from '../issue.ts';
import type { Mapping } from '../mapping/mapping.ts';
import type { Target } from '../mapping/target.ts';

/** Codes that the catalogue does not hold, and what the target leaves open that nothing supplies. */
export function targetIssues(
  target: Target,
  path: Path,
  supplied: Supplied,
  given: { readonly catalogue: Catalogue; readonly mapping: Mapping },
): Issue[] {
  const { catalogue } = given;
  const prepared: Prepared = { ...given, supplied };
  const conversion = targetConversion(target);
  return [
    ...codeUses(target, conversion).flatMap(([table, code, property]) =>
      unknownCode(table, code, [...path, property], catalogue),
    ),
    ...sideIssues(target, path, prepared),
    ...openIssues(target, path, supplied),
    ...(conversion.issues?.(target, path, prepared) ?? []),
  ];
}

function codeUses(target: Target, conversion: TargetConversion<Target>): readonly CodeUse[] {
  const uses: CodeUse[] = [];
  if ('region' in target) uses.push(['regions', target.region, 'region']);
  if ('methods' in target) {
    for (const method of target.methods ?? []) uses.push(['methods', method, 'methods']);
  }
  if ('modality' in target) uses.push(['modalities', target.modality, 'modality']);
  return [...uses, ...conversion.codes(target)];
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
  return [
    table === 'regions'
      ? issue('unknown-region', path, { reason: 'table', near })
      : issue('unknown-code', path, { reason: 'table', table, near }),
  ];
}

function sideIssues(target: Target, path: Path, { supplied, catalogue }: Prepared): Issue[] {
  const laterality = lateralityOf(target, catalogue);
  const needsSide = targetConversion(target).sideOpen !== true;
  if (laterality === undefined || !('side' in target || needsSide)) return [];
  const { sides, required } = lateralitySides[laterality];
  const side: Side | undefined = 'side' in target ? target.side : undefined;
  if (side !== undefined && !sides.includes(side)) {
    return [issue('impossible-side', [...path, 'side'], { reason: 'place', codes: sides })];
  }
  const said = side !== undefined || supplied.side || ('sideFrom' in target && target.sideFrom);
  if (said || !required || !needsSide) return [];
  return [issue('missing-side', [...path, 'side'], { reason: 'target', codes: sides })];
}

function lateralityOf(target: Target, catalogue: Catalogue): Laterality | undefined {
  const { laterality } = targetConversion(target);
  if (laterality !== undefined) return laterality(target, catalogue);
  const region = 'region' in target ? target.region : undefined;
  return region === undefined ? undefined : catalogue.regions.get(region)?.laterality;
}

/** Region and modality: needed, and given by nothing. */
function openIssues(target: Target, path: Path, supplied: Supplied): Issue[] {
  const { needs } = targetConversion(target);
  if (needs === undefined || supplied[needs]) return [];
  const open = needs === 'region' ? !('region' in target) : !('modality' in target);
  return open ? [issue('missing-property', [...path, needs], { reason: needs })] : [];
}
