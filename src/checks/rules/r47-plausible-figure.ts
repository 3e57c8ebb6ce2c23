import { ruleTitles } from '../../issues/english/rules.ts';
import type { Measurement } from '../../model/statement.ts';
import { canonicalFigure, isWithinSpan, type Limits, limitsOf } from '../../terminology/limits.ts';
import type { CheckContext } from '../context.ts';
import { figureOf, isMeasured, measureName } from '../facts/measured.ts';
import { sideText } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/**
 * Fires as an error where no face or neck can give a figure, as a check where a figure is unusual, and
 * proposes the slip of a digit, sign or unit that would explain it. Nothing is put right by itself.
 */
export const r47PlausibleFigure: ConsistencyRule = {
  id: 'R47',
  title: ruleTitles.R47,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'implausible-figure',
  source: 'table of limits, each end with its source or marked as common practice',
  evidence: 'common-practice',
  run: (context) =>
    context.index.all('measurement').flatMap((statement) => {
      const limits = limitsOf(statement.measure);
      return limits === undefined ? [] : plausible(context, statement, limits);
    }),
};

function plausible(
  context: CheckContext,
  statement: Measurement,
  { possible, usual }: Limits,
): readonly RuleFinding[] {
  const name = `${measureName(context, statement.measure)} ${sideText(statement.side)}`.trim();
  const base = {
    on: statement.key,
    ...(statement.side !== undefined && { side: statement.side }),
    inputsUsed: [statement.key],
  };
  if (!isMeasured(figureOf(context, statement))) {
    const missing = { outcome: 'not-evaluable' as const, inputsMissing: ['a figure'] };
    return [{ ...base, ...missing, text: `${name}: there is no figure to look at.` }];
  }
  const figures = figuresOf(statement);
  const impossible = figures.find((one) => !isWithinSpan(one, possible));
  const unusual = figures.find((one) => !isWithinSpan(one, usual));
  const figure = impossible ?? unusual;
  if (figure === undefined) {
    const text = `${name}: a usual figure.`;
    return [{ ...base, outcome: 'does-not-fire', inputsMissing: [], text }];
  }
  const span = impossible === undefined ? usual : possible;
  const slips = slipsOf(figure, statement.unit, usual);
  const [what, sure] = impossible === undefined ? ['unusual', 'check'] : ['impossible', 'error'];
  return [
    {
      ...base,
      outcome: 'fires',
      severity: sure === 'error' ? 'error' : 'check',
      inputsMissing: [],
      text: `${name}: ${what}, outside ${span.low} to ${span.high} (${span.source}).${slips.length === 0 ? '' : ` A slip? ${slips.join('; ')}.`}`,
      values: slips.map((value, at) => ({ name: `slip ${at + 1}`, value })),
    },
  ];
}

/** The value and every reading in the canonical unit. */
function figuresOf({ value, readings = [], unit }: Measurement): readonly number[] {
  return [...(value === undefined ? [] : [value]), ...readings].flatMap(
    (text) => canonicalFigure(text, unit) ?? [],
  );
}

/** What was perhaps meant: a decimal point moved, a sign, or the other of two units. */
function slipsOf(figure: number, unit: string, usual: Limits['usual']): readonly string[] {
  const tries: readonly (readonly [number, string])[] = [
    [figure / 10, unit === 'cm' ? 'mm was meant and cm given' : 'a decimal point left out'],
    [figure * 10, unit === 'mm' ? 'cm was meant and mm given' : 'a decimal point too many'],
    [-figure, 'a minus sign'],
    [figure / 100, 'two digits too many'],
  ];
  return tries
    .filter(([value]) => value !== figure && isWithinSpan(value, usual))
    .map(([value, slip]) => `${Number(value.toPrecision(6))}, ${slip}`);
}
