import type { Told, ToldAmong } from '../kinds/facets/page.ts';
import { tell } from '../kinds/registries/pages.ts';
import type { Key } from '../model/primitive.ts';
import type { Statement } from '../model/statement.ts';
import { type Content, element, type Html, joined } from './html.ts';
import { type Page, remarks } from './page.ts';
import { placesText } from './places.ts';

/** A line of the page and the statements it tells. */
export interface Line {
  readonly of: readonly Key[];
  readonly content: Content;
}

/** A statement in one line, complete when it is read alone: without the heading of a list or table. */
export function lineText(told: Told, page: Page): Content {
  if ('line' in told) return told.line;
  if ('head' in told) return amongText([told], page);
  const side = told.side === undefined ? '' : `, ${page.teller.side(told.side)}`;
  return joined(`${told.name}${side}: `, told.answer);
}

/** Lines of statements of one list; statements of which the same is said share one. */
export function linesOf(statements: readonly Statement[], page: Page): readonly Line[] {
  const groups = new Map<string, { of: Key[]; told: ToldAmong[] }>();
  const lines: (Line | { of: Key[]; told: ToldAmong[] })[] = [];
  for (const statement of statements) {
    const told = tell(statement, page);
    const below = remarks(page, statement);
    if (!('head' in told) || below !== undefined) {
      lines.push({ of: [statement.key], content: [lineText(told, page), below] });
      continue;
    }
    const key = JSON.stringify([told.head, told.tail, told.of === undefined]);
    const group = groups.get(key) ?? { of: [], told: [] };
    if (!groups.has(key)) lines.push(group);
    groups.set(key, group);
    group.of.push(statement.key);
    group.told.push(told);
  }
  return byPlaces(lines, page);
}

/** Of the same places several things can be said in one line, each in words that hold by themselves. */
function byPlaces(lines: readonly (Line | { of: Key[]; told: ToldAmong[] })[], page: Page): Line[] {
  const told: Line[] = [];
  const shared = new Map<string, { of: Key[]; heads: string[]; rest: string; at: number }>();
  for (const line of lines) {
    if (!('told' in line)) {
      told.push(line);
      continue;
    }
    const [{ head = '', tail = '' } = {}] = line.told;
    const rest = namesText(line.told, page) + tail;
    const there = shared.get(rest) ?? { of: [], heads: [], rest, at: told.length };
    if (!shared.has(rest)) told.push({ of: there.of, content: '' });
    shared.set(rest, there);
    for (const key of line.of) there.of.push(key);
    there.heads.push(head);
  }
  for (const { of, heads, rest, at } of shared.values()) {
    told[at] = { of, content: `${heads.join('; ')}${rest}` };
  }
  return told;
}

function amongText(told: readonly ToldAmong[], page: Page): string {
  const [{ head = '', tail = '' } = {}] = told;
  return `${head}${namesText(told, page)}${tail}`;
}

function namesText(told: readonly ToldAmong[], page: Page): string {
  const places = told.flatMap(({ of }) => of ?? []);
  return places.length === 0 ? '' : placesText(places, page);
}

/** A list in which each line names the statements that it tells. */
export function lineList(lines: readonly Line[]): Html | undefined {
  if (lines.length === 0) return undefined;
  return element(
    'ul',
    {},
    lines.map(({ of, content }) => element('li', { 'data-of': of.join(' ') }, content)),
  );
}
