import { listIn } from '../../checks/exam-index.ts';
import { exact, signedText, subtract } from '../../checks/figures/decimal.ts';
import type { ToldInTable } from '../../kinds/facets/page.ts';
import { tell } from '../../kinds/registries/pages.ts';
import type { Key } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import { type Content, element, joined, section, table } from '../html.ts';
import { type Line, lineList } from '../lines.ts';
import { type Page, remarks, separated } from '../page.ts';
import { headingOf, type SideTable } from '../sections.ts';

/** An answer with its statement and what stands below it. */
interface Answer {
  readonly statement: Statement;
  readonly told: ToldInTable;
  readonly below: Content;
}

/** A row: what it is about, and the answers under that name. */
interface Row {
  readonly name: string;
  readonly answers: readonly Answer[];
}

/**
 * Sensation, tests and measures: a table with a column for each side. What is alike on both sides, and
 * what has no side, stands in lines below it, those of one answer together.
 */
export function sideTablePart(
  id: SideTable,
  statements: readonly Statement[],
  page: Page,
): Content {
  const { labels, teller } = page;
  const withDifference = id === 'measures';
  const rows = rowsOf(statements, page).map(({ name, answers }) => ({
    name,
    sided: answers.filter(({ told }) => columnsOf(told.side).length > 0),
    others: answers.filter(({ told }) => columnsOf(told.side).length === 0),
  }));
  const isTold = (sided: readonly Answer[]): boolean => !withDifference && isAlike(sided, page);
  const alike = rows
    .filter(({ sided }) => isTold(sided))
    .map(({ name, sided }): Row => ({ name, answers: sided }));
  const others = rows.flatMap(({ name, others: without }) =>
    without.map((answer): Row => ({ name, answers: [answer] })),
  );
  const bare = ({ answers: [one] }: Row): boolean =>
    !withDifference && one !== undefined && isBare(one, page) && one.told.side === undefined;
  const { what, right, left } = labels.columns;
  return section(
    id,
    headingOf(id, labels),
    table({
      caption: headingOf(id, labels),
      head: [what, right, left, ...(withDifference ? [labels.difference] : [])],
      rows: rows
        .filter(({ sided }) => sided.length > 0 && !isTold(sided))
        .map(({ name, sided }) => row(name, sided, withDifference, page)),
    }),
    lineList([
      ...byAnswer(alike).map((group) => answerLine(group, ` – ${teller.side('both')}`)),
      ...byAnswer(others.filter(bare)).map((group) =>
        group.length === 1 && group[0] !== undefined
          ? otherLine(group[0], page)
          : answerLine(group, ''),
      ),
      ...others.filter((one) => !bare(one)).map((one) => otherLine(one, page)),
    ]),
  );
}

function rowsOf(statements: readonly Statement[], page: Page): readonly Row[] {
  const rows = new Map<string, Answer[]>();
  for (const statement of statements) {
    const told = tell(statement, page);
    if (!('table' in told)) continue;
    listIn(rows, told.name).push({ statement, told, below: remarks(page, statement) });
  }
  return [...rows].map(([name, answers]) => ({ name, answers }));
}

/** Rows of the same answer. */
function byAnswer(rows: readonly Row[]): readonly (readonly Row[])[] {
  const groups = new Map<string, Row[]>();
  for (const one of rows) listIn(groups, joined(one.answers[0]?.told.answer).markup).push(one);
  return [...groups.values()];
}

function columnsOf(side: ToldInTable['side']): readonly ('right' | 'left')[] {
  if (side === 'both') return ['right', 'left'];
  return side === 'right' || side === 'left' ? [side] : [];
}

/** Nothing stands below it, and it does not deviate. */
function isBare({ statement, below }: Answer, { numbers }: Page): boolean {
  return below === undefined && !numbers.has(statement.key);
}

/** Both sides are told, alike, without a word more, and none deviates. */
function isAlike(answers: readonly Answer[], page: Page): boolean {
  const sides = answers.flatMap(({ told }) => columnsOf(told.side));
  if (sides.length !== 2 || sides[0] === sides[1]) return false;
  const [first, second = first] = answers.map(({ told }) => joined(told.answer).markup);
  return first === second && answers.every((answer) => isBare(answer, page));
}

function answerLine(group: readonly Row[], where: string): Line {
  return {
    of: group.flatMap(({ answers }) => answers.map(({ statement }) => statement.key)),
    content: [
      group[0]?.answers[0]?.told.answer,
      `${where}: ${group.map(({ name }) => name).join('; ')}`,
    ],
  };
}

function otherLine({ name, answers }: Row, page: Page): Line {
  return {
    of: answers.map(({ statement }) => statement.key),
    content: answers.map(({ statement, told, below }) => [
      `${name}${told.side === undefined ? '' : `, ${page.teller.side(told.side)}`}: `,
      answerText(told, statement.key, page, undefined),
      below,
    ]),
  };
}

function row(
  name: string,
  answers: readonly Answer[],
  withDifference: boolean,
  page: Page,
): Content[] {
  const cell = (column: 'right' | 'left'): Content => {
    const there = answers.filter(({ told }) => columnsOf(told.side).includes(column));
    return separated(
      there.map(({ statement, told, below }) => [
        // What is said of both sides stands twice and is named once.
        answerText(
          told,
          statement.key,
          page,
          told.side === 'both' && column === 'left' ? undefined : statement.key,
        ),
        below,
      ]),
    );
  };
  return [
    name,
    // A side that nothing was said about says so by a dash.
    cell('right') ?? '–',
    cell('left') ?? '–',
    ...(withDifference
      ? [
          sideDifference(
            answers.map(({ told }) => told),
            page,
          ) ?? '–',
        ]
      : []),
  ];
}

function answerText(
  { answer }: ToldInTable,
  key: Key,
  { numbers }: Page,
  of: Key | undefined,
): Content {
  return element(
    'span',
    { 'data-of': of, class: numbers.has(key) ? 'deviates' : undefined },
    answer,
  );
}

/** Right less left, exact; nothing unless there is one usable figure a side, in the same unit. */
function sideDifference(
  [first, second, ...more]: readonly ToldInTable[],
  { teller }: Page,
): string | undefined {
  if (first === undefined || second === undefined || more.length > 0) return undefined;
  const right = [first, second].find(({ side }) => side === 'right')?.figure;
  const left = [first, second].find(({ side }) => side === 'left')?.figure;
  if (right === undefined || left === undefined || right.unit !== left.unit) return undefined;
  const [a, b] = [exact(right.value), exact(left.value)];
  return a === undefined || b === undefined
    ? undefined
    : teller.quantity({ value: signedText(subtract(a, b)), unit: right.unit });
}
