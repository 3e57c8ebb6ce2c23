import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import { units } from '../../terminology/tables/units.ts';
import { issue } from '../issue.ts';
import type { HeadingPlace, Mapping } from '../mapping/mapping.ts';
import { unknownCode } from './targets.ts';
import { clashIssues, reasonIssues } from './words.ts';

/** Tables of words for codes of the table of the same name in the catalogue. */
const codeTables = ['methods', 'measureConditions', 'regions', 'modalities'] as const;
const otherTables = ['noValue', 'sides', 'units'] as const;

/** Word tables of the mapping as a whole: codes that do not exist, words that match each other. */
export function tableIssues(mapping: Mapping, catalogue: Catalogue): Issue[] {
  const issues = [...codeTables, ...otherTables].flatMap((table) =>
    clashIssues(mapping[table], [table], mapping),
  );
  for (const table of codeTables) {
    for (const [word, code] of Object.entries(mapping[table] ?? {})) {
      append(issues, unknownCode(table, code, [table, word], catalogue));
    }
  }
  for (const [word, meaning] of Object.entries(mapping.noValue ?? {})) {
    append(issues, reasonIssues(meaning, ['noValue', word], catalogue));
  }
  for (const [name, table] of Object.entries(mapping.words ?? {})) {
    append(issues, clashIssues(table, ['words', name], mapping));
    for (const [word, meaning] of Object.entries(table)) {
      append(issues, reasonIssues(meaning, ['words', name, word], catalogue));
    }
  }
  for (const [heading, { region, side }] of Object.entries(mapping.headings ?? {})) {
    const path = ['headings', heading];
    append(issues, unknownCode('regions', region, [...path, 'region'], catalogue));
    append(issues, headingSideIssues(region, side, path, catalogue));
  }
  return [...issues, ...unitIssues(mapping), ...sideIssues(mapping, catalogue)];
}

/** A side is of a region, and of one that has it. */
function headingSideIssues(
  region: string | undefined,
  side: HeadingPlace['side'],
  path: Path,
  catalogue: Catalogue,
): Issue[] {
  if (side === undefined) return [];
  if (region === undefined) {
    return [issue('missing-property', [...path, 'region'], { reason: 'region' })];
  }
  const row = catalogue.regions.get(region);
  const sides = row && lateralitySides[row.laterality].sides;
  if (sides === undefined || sides.includes(side)) return [];
  return [issue('impossible-side', [...path, 'side'], { reason: 'place', codes: sides })];
}

function unitIssues(mapping: Mapping): Issue[] {
  const known = new Set(units.map(({ code }) => code));
  return Object.entries(mapping.units ?? {})
    .filter(([, unit]) => !known.has(unit))
    .map(([word]) =>
      issue('unknown-unit', ['units', word], { reason: 'mapping', units: [...known] }),
    );
}

function sideIssues(mapping: Mapping, catalogue: Catalogue): Issue[] {
  return Object.entries(mapping.sides ?? {}).flatMap(([word, side]) => {
    if (typeof side === 'string') return [];
    if (catalogue.sections.has(side.within) || catalogue.regions.has(side.within)) return [];
    return [issue('unknown-region', ['sides', word, 'within'], { reason: 'within' })];
  });
}
