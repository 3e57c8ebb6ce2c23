import { exact, signedText, subtract } from '../../checks/decimal.ts';
import type { Measurement, ScaleScore } from '../../model/statement.ts';
import { type Content, joined, list, section, table, words } from '../html.ts';
import { type Page, remarks, separated } from '../page.ts';
import { ofKind } from '../teller.ts';
import { sideCells, sideRows } from './sides.ts';

/** Measurements by side, with the difference where both sides were measured alike. */
export function measurePart(page: Page): Content {
  const { exam, labels } = page;
  const measurements = ofKind(exam, 'measurement');
  const rows = sideRows(
    page,
    measurements,
    (one) => measureName(page, one),
    (one) => one.side,
    (one) => measureText(page, one),
  );
  const { what, right, left, other } = labels.columns;
  const difference = new Map(
    rows.map(({ name }) => {
      const same = measurements.filter((one) => measureName(page, one) === name);
      return [name, sideDifference(same)];
    }),
  );
  return section(
    'measures',
    labels.measures,
    table({
      caption: labels.measures,
      head: [what, right, left, other, labels.difference],
      rows: rows.map((row) => [...sideCells(row), difference.get(row.name) ?? '–']),
    }),
  );
}

/**
 * Measure, place where it is not the usual one, and conditions: lesions of two places, and pupils in
 * the light and in the dark, stand in rows of their own.
 */
function measureName({ teller, catalogue }: Page, one: Measurement): string {
  const usual = catalogue.measures.get(one.measure)?.region === one.region;
  const under = (one.conditions ?? []).map((code) => teller.display('measureConditions', code));
  const place = usual ? [] : [teller.place(one.region, undefined)];
  return [teller.display('measures', one.measure), ...place, ...under].join(', ');
}

/** Right less left, exact; nothing unless there is one usable figure a side, in the same unit. */
function sideDifference(measurements: readonly Measurement[]): string | undefined {
  const [first, second, third] = measurements;
  if (first === undefined || second === undefined || third !== undefined) return undefined;
  const right = [first, second].find(({ side }) => side === 'right');
  const left = [first, second].find(({ side }) => side === 'left');
  if (right?.value === undefined || left?.value === undefined) return undefined;
  if (right.unit !== left.unit || right.comparator || left.comparator) return undefined;
  const [a, b] = [exact(right.value), exact(left.value)];
  return a === undefined || b === undefined
    ? undefined
    : `${signedText(subtract(a, b))} ${right.unit}`;
}

function measureText(page: Page, measurement: Measurement): Content {
  const { teller, exam } = page;
  const { value, comparator = '', unit, unusable, readings, convention, about } = measurement;
  const measured = about && exam.statements.find(({ key }) => key === about);
  return joined(
    separated([
      value === undefined ? undefined : `${comparator}${value} ${unit}`,
      unusable && words(teller.reason(unusable)),
      readings && `(${readings.join(', ')})`,
      convention && teller.answer('convention', convention),
      measurement.estimated === true && teller.display('items', 'estimated'),
      measured && teller.subject(measured),
      measurement.place && words(measurement.place),
    ]),
    remarks(page, measurement),
  );
}

/** Scores as the examiner gave them, each with the version of its scale. */
export function scorePart(page: Page): Content {
  const { exam, labels } = page;
  return section(
    'scores',
    labels.scores,
    list(ofKind(exam, 'scale-score').map((score) => scoreText(page, score))),
  );
}

function scoreText(page: Page, score: ScaleScore): Content {
  const { teller, catalogue, labels } = page;
  const scale = catalogue.scales.get(score.scale);
  const answer =
    typeof score.score === 'number'
      ? String(score.score)
      : teller.inner(scale?.grades, score.score);
  const items = (score.items ?? []).map(({ item, value }) => {
    const said = typeof value === 'boolean' ? teller.flag(value) : String(value);
    return `${teller.inner(scale?.items, item)}: ${said}`;
  });
  return joined(
    `${teller.subject(score)} (${labels.version} ${score.version})`,
    separated(
      [
        '',
        score.region === undefined
          ? score.side && `, ${teller.side(score.side)}`
          : ` – ${teller.place(score.region, score.side)}`,
        `: ${answer}`,
        items.length > 0 && ` (${items.join('; ')})`,
      ],
      '',
    ),
    remarks(page, score),
  );
}
