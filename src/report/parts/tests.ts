import type { FunctionTest, Movement, Sensation } from '../../model/statement.ts';
import { type Content, joined, section, table, words } from '../html.ts';
import { type Page, remarks, separated } from '../page.ts';
import { ofKind } from '../teller.ts';
import { sideCells, sideRows } from './sides.ts';

/** Sensation by point and side; the patient's own comparison of the sides in the last column. */
export function sensationPart(page: Page): Content {
  const { exam, labels, teller } = page;
  const rows = sideRows(
    page,
    ofKind(exam, 'sensation'),
    (one) => teller.display('testPoints', one.point),
    (one) => one.side,
    (one) => sensationText(page, one),
  );
  const compared = sideRows(
    page,
    ofKind(exam, 'sensation-comparison'),
    (one) => `${teller.display('testPoints', one.point)}, ${labels.compared}`,
    () => undefined,
    (one) =>
      joined(
        `${teller.display('modalities', one.modality)}: ${teller.answer('comparison', one.result)}`,
        one.reason && joined(' (', words(teller.reason(one.reason)), ')'),
        remarks(page, one),
      ),
  );
  const { what, right, left, other } = labels.columns;
  return section(
    'sensation',
    labels.sensation,
    table({
      caption: labels.sensation,
      head: [what, right, left, other],
      rows: [...rows, ...compared].map(sideCells),
    }),
  );
}

function sensationText(page: Page, { results, ...statement }: Sensation): Content {
  const { teller } = page;
  return joined(
    separated(
      results.map(({ modality, result, reason }) =>
        joined(
          `${teller.display('modalities', modality)}: ${teller.display('sensationResults', result)}`,
          reason && joined(' (', words(teller.reason(reason)), ')'),
        ),
      ),
    ),
    remarks(page, { ...statement, results }),
  );
}

/** Movements and tests of function, by side. */
export function testPart(page: Page): Content {
  const { exam, labels, teller } = page;
  const statements = [...ofKind(exam, 'movement'), ...ofKind(exam, 'function-test')];
  const rows = sideRows<Movement | FunctionTest>(
    page,
    statements,
    (one) => teller.subject(one),
    (one) => one.side,
    (one) => testText(page, one),
  );
  const { what, right, left, other } = labels.columns;
  return section(
    'tests',
    labels.tests,
    table({
      caption: labels.tests,
      head: [what, right, left, other],
      rows: rows.map(sideCells),
    }),
  );
}

function testText(page: Page, statement: Movement | FunctionTest): Content {
  const { teller } = page;
  const answer = statement.kind === 'movement' ? statement.grade : statement.result;
  return joined(
    separated([
      teller.display('testResults', answer),
      statement.kind === 'movement' &&
        statement.synkinesis !== undefined &&
        `${teller.display('items', 'synkinesis')}: ${teller.flag(statement.synkinesis)}`,
      statement.reason && words(teller.reason(statement.reason)),
    ]),
    remarks(page, statement),
  );
}
