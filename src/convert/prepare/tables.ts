import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { units } from '../../terminology/tables/units.ts';
import { issue } from '../issue.ts';
import type { Mapping } from '../mapping/mapping.ts';
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
  return [...issues, ...unitIssues(mapping), ...sideIssues(mapping, catalogue)];
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
