import { describe, expect, it } from 'vitest';
import { type Exam, parseExam, type Statement } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { emptyExam } from './empty-exam.ts';
import { type ParsedPage, parsePage } from './reading/parsed-page.ts';
import { type MapRow, type Mark, marks, type Told } from './told-by-kind/told.ts';
import { toldByKind } from './told-by-kind/told-by-kind.ts';

const empty = emptyExam('skin-lesion');

const silence = 'Nothing was said: not normal by silence';

function examOf(cases: readonly Told[]): Exam {
  const statements = cases.map(({ statement }, at): Statement => ({ key: `s${at}`, ...statement }));
  return { ...empty, statements };
}

function pageOf(exam: Exam, prior?: Exam): ParsedPage {
  return parsePage(toHtml(exam, prior && { checks: { prior } }));
}

/** Sections that tell a statement of the exam. */
function told(page: ParsedPage): string[] {
  return [...page.sections].flatMap(([id, { of }]) => (of.length > 0 ? [id] : []));
}

/** Marks of the table of regions by name of the region, without those where nothing was said. */
function mapTable(page: ParsedPage): Record<string, MapRow> {
  const mark = (cell = ''): Mark => {
    const named = Object.entries(marks).find(([, text]) => cell.endsWith(` ${text}`))?.[0];
    if (named === undefined && cell !== '' && !cell.endsWith(silence)) throw new Error(cell);
    // The entries are those of `marks`.
    return (named ?? '') as Mark;
  };
  const rows = page.sections.get('map')?.rows ?? [];
  return Object.fromEntries(
    rows
      .map(([name = '', ...cells]): [string, MapRow] => [
        name,
        [mark(cells[0]), mark(cells[1]), mark(cells[2])],
      ])
      .filter(([, [right, left, middle]]) => right !== '' || left !== '' || middle !== ''),
  );
}

/** The drawing says of each place what the table says, on the side of the patient on which it is. */
function checkDrawing(page: ParsedPage, table: Readonly<Record<string, MapRow>>): void {
  for (const { title, mark, side } of page.drawing) {
    const [, name = '', words, said] = /^(.*?)(?:, (right|left))?: (.*)$/.exec(title) ?? [];
    const [right, left, middle] = table[name] ?? ['', '', ''];
    const shown = words === 'right' ? right : words === 'left' ? left : middle;
    expect({ title, mark, said, side }).toEqual({
      title,
      mark: shown === '' ? 'silent' : shown,
      said: shown === '' ? silence : marks[shown],
      side: words ?? 'middle',
    });
  }
}

function checkAlone({ section, line, row, map }: Told, page: ParsedPage): void {
  expect(told(page)).toEqual([section]);
  const found = page.sections.get(section);
  expect(found?.lines).toEqual(line === undefined ? [] : [line]);
  expect(found?.rows).toEqual(row === undefined ? [] : [row]);
  if (row !== undefined) {
    expect(found?.head.slice(0, 3)).toEqual(['What', 'Right', 'Left']);
  }
  expect(mapTable(page)).toEqual(map);
  checkDrawing(page, map);
}

const kinds = Object.entries(toldByKind).map(([kind, cases]) => ({
  kind,
  cases: [...Object.values<Told>(cases.sides), ...cases.forms] as readonly Told[],
  sides: Object.entries<Told>(cases.sides),
  forms: cases.forms as readonly Told[],
}));

describe.each(kinds)('the page tells a $kind', ({ sides, forms, cases }) => {
  it('in an exam that the parser takes', () => {
    for (const one of cases) {
      const issues = parseExam(examOf([one])).issues.map(({ code }) => code);
      if (one.refused === true) expect(issues, JSON.stringify(one.statement)).not.toEqual([]);
      else expect(issues, JSON.stringify(one.statement)).toEqual([]);
    }
  });

  it.each(sides)('%s: in the right column, line and place of the map', (_, one) => {
    checkAlone(one, pageOf(examOf([one])));
  });

  it('in each of its forms', () => {
    for (const one of forms) checkAlone(one, pageOf(examOf([one])));
  });
});

describe('a page of an exam with every kind', () => {
  const every = kinds.flatMap(({ cases }) => cases);

  it('tells each of them once, in its section', () => {
    const page = pageOf(examOf(every));
    const sections = every.map(({ section }, at) => [`s${at}`, section]);
    const found = [...page.sections].flatMap(([id, { of }]) => of.map((key) => [key, id]));
    expect(found.sort()).toEqual(sections.sort());
  });
});

/** Statements on the right of the forehead, by the mark that they make, strongest first. */
const byMark: Readonly<Record<Exclude<Mark, ''>, Told['statement']>> = {
  sign: {
    kind: 'finding',
    finding: 'naevus',
    presence: 'present',
    region: 'forehead',
    side: 'right',
  },
  partial: {
    kind: 'region-state',
    state: 'partial',
    region: 'forehead',
    side: 'right',
    methods: ['inspection'],
    limit: { code: 'unable-hair' },
  },
  'not-examined': {
    kind: 'region-state',
    state: 'not-examined',
    region: 'forehead',
    side: 'right',
    reason: { code: 'time' },
  },
  normal: {
    kind: 'region-state',
    state: 'normal',
    region: 'forehead',
    side: 'right',
    methods: ['palpation'],
  },
  said: {
    kind: 'finding',
    finding: 'naevus',
    presence: 'absent',
    region: 'forehead',
    side: 'right',
  },
};

describe('the map, where two things are said of one place', () => {
  const strongest = Object.entries(byMark) as [Exclude<Mark, ''>, Told['statement']][];
  const pairs = strongest.flatMap(([mark, strong], at) =>
    strongest.slice(at).map(([other, weak]) => ({ mark, strong, other, weak })),
  );

  it.each(pairs)('$mark is not hidden by $other, in either order', ({ mark, strong, weak }) => {
    for (const both of [
      [strong, weak],
      [weak, strong],
    ]) {
      const page = pageOf({
        ...empty,
        statements: both.map((one, at): Statement => ({ key: `s${at}`, ...one })),
      });
      const expected: Record<string, MapRow> = { Forehead: [mark, '', ''] };
      expect(mapTable(page)).toEqual(expected);
      checkDrawing(page, expected);
    }
  });

  it('keeps a sign on one side off the other', () => {
    const other = { ...byMark.normal, side: 'left' } as Told['statement'];
    const statements = [byMark.sign, other].map(
      (one, at): Statement => ({ key: `s${at}`, ...one }),
    );
    const expected: Record<string, MapRow> = { Forehead: ['sign', 'normal', ''] };
    const page = pageOf({ ...empty, statements });
    expect(mapTable(page)).toEqual(expected);
    checkDrawing(page, expected);
  });
});

describe('the table of measurements', () => {
  const lesion = (region: string, side: 'right' | 'left', value: string): Told['statement'] => ({
    kind: 'measurement',
    measure: 'lesion-max',
    region,
    side,
    value,
    unit: 'mm',
  });
  const rowsOf = (...statements: Told['statement'][]): unknown =>
    pageOf({
      ...empty,
      statements: statements.map((one, at): Statement => ({ key: `s${at}`, ...one })),
    }).sections.get('measures')?.rows;

  it('has right less left, whatever the order in which they were taken', () => {
    const right = lesion('forehead', 'right', '4.0');
    const left = lesion('forehead', 'left', '6.5');
    const row = ['Greatest diameter of a lesion, Forehead', '4.0 mm', '6.5 mm', '-2.5 mm'];
    expect(rowsOf(right, left)).toEqual([row]);
    expect(rowsOf(left, right)).toEqual([row]);
  });

  it('keeps what was measured in two places apart and takes no difference of them', () => {
    expect(rowsOf(lesion('forehead', 'right', '4.0'), lesion('temple', 'left', '6.5'))).toEqual([
      ['Greatest diameter of a lesion, Forehead', '4.0 mm', '–', '–'],
      ['Greatest diameter of a lesion, Temple', '–', '6.5 mm', '–'],
    ]);
  });
});
