import type { Catalogue } from '../../terminology/catalogue.ts';
import { sideText } from '../../terminology/sides.ts';

/** Meanings that stand in no table of codes. */
const plain = [
  ...['present', 'absent', 'indeterminate', 'suspected', 'confirmed', 'normal', 'abnormal'],
  ...['yes', 'no', 'unsure', 'declined', 'not-asked', 'equal', 'right-less', 'left-less'],
  ...['not-compared', 'not-stated', 'text', 'not-examined', 'not-applicable', 'partial'],
];

/**
 * Meanings that a word can have, by the table of a mapping that it stands in; `words` for those of targets,
 * which are codes of any table and of the lists within its rows.
 */
export function meaningsOf(catalogue: Catalogue): ReadonlyMap<string, ReadonlySet<string>> {
  const all = new Set(plain);
  for (const table of Object.values(catalogue)) {
    for (const row of table.values()) for (const code of codesIn(row, 3)) all.add(code);
  }
  return new Map<string, ReadonlySet<string>>([
    ['words', all],
    ['sides', new Set(Object.keys(sideText))],
    ['noValue', new Set(['not-stated', 'text', 'not-examined', 'not-applicable', 'partial'])],
    ...(['methods', 'measureConditions', 'regions', 'modalities'] as const).map(
      (name) => [name, new Set(catalogue[name].keys())] as const,
    ),
  ]);
}

/** The codes of a row and of the lists in it. */
function codesIn(value: unknown, depth: number): readonly string[] {
  if (typeof value !== 'object' || value === null || depth === 0) return [];
  if (Array.isArray(value)) return value.flatMap((one) => codesIn(one, depth - 1));
  const own = 'code' in value && typeof value.code === 'string' ? [value.code] : [];
  return [...own, ...Object.values(value).flatMap((one) => codesIn(one, depth - 1))];
}
