import type { Change, Comparison, FigureChange } from '../../checks/compare/comparison.ts';
import { append } from '../../data/append.ts';
import { subjectTables } from '../../kinds/registries/subject-tables.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { sideText } from '../../terminology/sides.ts';

const headings: readonly (readonly [Change, string])[] = [
  ['new', 'New'],
  ['gone', 'Gone'],
  ['changed', 'Changed'],
  ['unchanged', 'Unchanged, by figures taken the same way'],
];

/** What changed between two exams, for people; what cannot be compared is counted by reason. */
export function compareText(
  comparisons: readonly Comparison[],
  catalogue: Catalogue = builtInCatalogue,
): string {
  const lines = headings.flatMap(([change, heading]) => {
    const members = comparisons.filter((one) => one.change === change);
    return members.length === 0
      ? []
      : [heading, ...members.map((one) => comparedLine(one, catalogue)), ''];
  });
  const same = comparisons.filter(({ change }) => change === 'same').length;
  if (same > 0) lines.push(`Stated alike in both, without a figure: ${same}`, '');
  const reasons = new Map<string, number>();
  for (const { change, reason = 'no reason given' } of comparisons) {
    if (change === 'not-comparable') reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
  }
  if (reasons.size > 0) {
    const rows = [...reasons].map(([reason, count]) => `  ${String(count).padStart(5)}  ${reason}`);
    append(lines, ['Not comparable', ...rows, '']);
  }
  return lines.length === 0 ? 'Nothing to compare.\n' : `${lines.join('\n')}`;
}

function comparedLine(one: Comparison, catalogue: Catalogue): string {
  const { figures, values, days } = one;
  const parts = [
    comparedName(one, catalogue),
    figures === undefined ? '' : figuresText(figures),
    values === undefined ? '' : `${values.before} -> ${values.now}`,
    days === undefined ? '' : `in ${days} days`,
  ];
  return `  ${parts.filter(Boolean).join('  ')}`;
}

function figuresText({
  before,
  now,
  delta,
  unit,
  percent,
  withinResolution,
}: FigureChange): string {
  const part = percent === undefined ? '' : `, ${percent} %`;
  const text = `${before.value} ${before.unit} -> ${now.value} ${now.unit} (${delta} ${unit}${part})`;
  return withinResolution === true ? `${text}, within what the instrument can tell apart` : text;
}

/** What a comparison is about, in words: `Naevus (mole), Temple, right`. */
function comparedName(
  { kind, code, region, side, modality }: Comparison,
  catalogue: Catalogue,
): string {
  const name = displayOf(catalogue, subjectTables[kind], code);
  const place =
    region === undefined || region === code ? '' : displayOf(catalogue, 'regions', region);
  const way = modality === undefined ? '' : displayOf(catalogue, 'modalities', modality);
  return [name, place, side === undefined ? '' : sideText[side], way].filter(Boolean).join(', ');
}

export function displayOf(catalogue: Catalogue, table: TableName, code: string): string {
  return catalogue[table].get(code)?.display ?? code;
}
