import { exact, signedText, subtract } from '../../checks/figures/decimal.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import type { ToldInList, ToldInTable } from '../../kinds/facets/page.ts';
import { tellAll } from '../../kinds/registries/pages.ts';
import { type Content, element, joined, list, section, table } from '../html.ts';
import { type Page, remarks, separated } from '../page.ts';
import {
  regionSections,
  type SideTable,
  sideTables,
  takenOverSection,
  wordSections,
} from '../sections.ts';

export interface StatementParts {
  /** Signs and states of regions. */
  readonly regions: readonly Content[];
  /** What was taken over and not looked at again, under what it was told as then. */
  readonly takenOver: Content;
  /** Tables by side, and then scores, complaints, notes and pictures. */
  readonly others: readonly Content[];
}

/**
 * The sections in which statements are told. Each statement is told once, with its note below it; a
 * section without statements is left out.
 */
export function statementParts(page: Page): StatementParts {
  const { labels } = page;
  const lines = new Map<string, Content[]>();
  const rows = new Map<string, Map<string, SideRow>>();
  const takenOver: Content[] = [];
  for (const { statement, told } of tellAll(page)) {
    const below = remarks(page, statement);
    if (isUnconfirmed(statement)) {
      takenOver.push(joined(asToldThen(page, told), below));
      continue;
    }
    if ('section' in told) addLine(lines, told, below);
    else addAnswer(rows, page, told, below);
  }
  const lists = (sections: typeof regionSections | typeof wordSections): Content[] =>
    Object.entries(sections).map(([id, heading]) =>
      section(id, heading(labels), list(lines.get(id) ?? [])),
    );
  const tables = Object.entries(sideTables).map(([id, heading]) =>
    section(
      id,
      heading(labels),
      sideTable(page, id as SideTable, [...(rows.get(id)?.values() ?? [])]),
    ),
  );
  return {
    regions: lists(regionSections),
    takenOver: section(
      'taken-over',
      takenOverSection(labels),
      takenOver.length > 0 && element('p', {}, labels.takenOverNote),
      list(takenOver),
    ),
    others: [...tables, ...lists(wordSections)],
  };
}

/** A line or an answer with the heading that it would stand under if it were of today. */
function asToldThen({ labels, teller }: Page, told: ToldInList | ToldInTable): Content {
  if ('section' in told) {
    return joined(`${{ ...regionSections, ...wordSections }[told.section](labels)}: `, told.line);
  }
  const side = told.side === undefined ? '' : `, ${teller.side(told.side)}`;
  return joined(`${sideTables[told.table](labels)}: ${told.name}${side}: `, told.answer);
}

function addLine(lines: Map<string, Content[]>, { section: id, line }: ToldInList, below: Content) {
  const there = lines.get(id) ?? [];
  lines.set(id, there);
  there.push(joined(line, below));
}

/** A row of a table with one column for each side: what it is about, and the answers by side. */
interface SideRow {
  readonly name: string;
  readonly right: Content[];
  readonly left: Content[];
  readonly other: Content[];
  readonly told: ToldInTable[];
}

/** Rows in the order in which their names come. A side that has no column is named with the answer. */
function addAnswer(
  tables: Map<string, Map<string, SideRow>>,
  { teller }: Page,
  told: ToldInTable,
  below: Content,
): void {
  const rows = tables.get(told.table) ?? new Map<string, SideRow>();
  tables.set(told.table, rows);
  const row = rows.get(told.name) ?? { name: told.name, right: [], left: [], other: [], told: [] };
  rows.set(told.name, row);
  row.told.push(told);
  const { side } = told;
  const answer = joined(told.answer, below);
  if (side === 'right' || side === 'both') row.right.push(answer);
  if (side === 'left' || side === 'both') row.left.push(answer);
  if (side === undefined) row.other.push(answer);
  else if (side !== 'right' && side !== 'left' && side !== 'both') {
    row.other.push(joined(`${teller.side(side)}: `, answer));
  }
}

function sideTable({ labels }: Page, id: SideTable, rows: readonly SideRow[]): Content {
  const { what, right, left, other } = labels.columns;
  const withDifference = id === 'measures';
  return table({
    caption: sideTables[id](labels),
    head: [what, right, left, other, ...(withDifference ? [labels.difference] : [])],
    rows: rows.map((row) => [
      row.name,
      // A side that nothing was said about says so by a dash.
      ...[row.right, row.left, row.other].map((said) => separated(said) ?? '–'),
      ...(withDifference ? [sideDifference(row.told) ?? '–'] : []),
    ]),
  });
}

/** Right less left, exact; nothing unless there is one usable figure a side, in the same unit. */
function sideDifference([first, second, ...more]: readonly ToldInTable[]): string | undefined {
  if (first === undefined || second === undefined || more.length > 0) return undefined;
  const right = [first, second].find(({ side }) => side === 'right')?.figure;
  const left = [first, second].find(({ side }) => side === 'left')?.figure;
  if (right === undefined || left === undefined || right.unit !== left.unit) return undefined;
  const [a, b] = [exact(right.value), exact(left.value)];
  return a === undefined || b === undefined
    ? undefined
    : `${signedText(subtract(a, b))} ${right.unit}`;
}
