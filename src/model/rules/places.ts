import { formOf } from '../../kinds/registries/forms.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExamRule } from './rule.ts';

/**
 * A sign stated where the tables do not expect it, or a method that the region does not take.
 * Warnings: the tables cannot know every sound use, so the statement is kept and exported.
 */
export const expectedPlaces: ExamRule = ({ exam, catalogue, report }) => {
  exam.statements.forEach((statement, at) => {
    if (!('region' in statement) || statement.region === undefined) return;
    const region = catalogue.regions.get(statement.region);
    if (region === undefined) return;
    const places = formOf(statement).expected?.(statement, catalogue) ?? [];
    if (places.length > 0 && !places.some((place) => isWithin(region.code, place, catalogue))) {
      report(
        'unexpected-region',
        ['statements', at, 'region'],
        { reason: 'sign', codes: places },
        { severity: 'warning', value: statement.region },
      );
    }
    if (!('methods' in statement)) return;
    statement.methods?.forEach((method, m) => {
      if (region.group || region.methods.includes(method) || !catalogue.methods.has(method)) return;
      report(
        'impossible-method',
        ['statements', at, 'methods', m],
        { reason: 'region', codes: region.methods },
        {
          severity: 'warning',
          value: method,
        },
      );
    });
  });
};

/** True when `region` is `group` or lies below it in the region tree. */
export function isWithin(region: string, group: string, catalogue: Catalogue): boolean {
  return lineageOf(region, catalogue).includes(group);
}

/** The region and those above it, nearest first; of no region, that alone. */
export function lineageOf(
  region: string | undefined,
  catalogue: Catalogue,
): readonly (string | undefined)[] {
  const line = [region];
  // The tree is four levels deep; the bound keeps a cycle in added regions from hanging.
  for (let at = parentOf(region, catalogue); at !== undefined && line.length < 20; ) {
    line.push(at);
    at = parentOf(at, catalogue);
  }
  return line;
}

function parentOf(region: string | undefined, catalogue: Catalogue): string | undefined {
  return region === undefined ? undefined : catalogue.regions.get(region)?.parent;
}
