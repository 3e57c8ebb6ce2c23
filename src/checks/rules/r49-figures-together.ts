import { ruleTitles } from '../../issues/english/rules.ts';
import type { Measurement } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import {
  figureText,
  isMeasured,
  type Measured,
  measureName,
  wholeFigureOf,
} from '../facts/measured.ts';
import { absolute, compare, type Exact, exact, subtract } from '../figures/decimal.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding, RuleSeverity } from '../rule.ts';

/** Two measures of which the first cannot be the greater one, with the reason. */
interface Order {
  readonly smaller: string;
  readonly greater: string;
  readonly severity: RuleSeverity;
  readonly why: string;
}

const orders: readonly Order[] = [
  {
    smaller: 'mrd1',
    greater: 'pfh',
    severity: 'error',
    why: 'the upper margin distance is a part of the fissure',
  },
  { smaller: 'pfh', greater: 'pfw', severity: 'error', why: 'a fissure is wider than it is high' },
  {
    smaller: 'icd',
    greater: 'ipd',
    severity: 'error',
    why: 'the inner canthi lie between the pupils',
  },
  {
    smaller: 'lagophthalmos',
    greater: 'pfh',
    severity: 'check',
    why: 'the gap on closure is a part of the fissure',
  },
  {
    smaller: 'lesion-perp',
    greater: 'lesion-max',
    severity: 'error',
    why: 'no diameter is longer than the greatest',
  },
  {
    smaller: 'mio',
    greater: 'mio-assist',
    severity: 'check',
    why: 'with help a mouth opens at least as far',
  },
  {
    smaller: 'node-short',
    greater: 'node-long',
    severity: 'error',
    why: 'the short axis is not the longer one',
  },
];

/** Fires where two figures of one place cannot both be right. */
export const r49FiguresTogether: ConsistencyRule = {
  id: 'R49',
  title: ruleTitles.R49,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'implausible-figure',
  source: 'what the measures are of; common practice, no source',
  evidence: 'common-practice',
  run: (context) => [
    ...orders.flatMap((order) => inOrder(context, order)),
    ...equalPupils(context),
  ],
};

function inOrder(context: CheckContext, order: Order): readonly RuleFinding[] {
  const greater = statementsOf(context, order.greater);
  return statementsOf(context, order.smaller).flatMap((small): RuleFinding[] => {
    const great = greater.find((one) => together(one, small));
    if (great === undefined) return [];
    const [a, b] = [wholeFigureOf(context, small), wholeFigureOf(context, great)];
    const base = {
      on: small.key,
      ...(small.side !== undefined && { side: small.side }),
      inputsUsed: [small.key, great.key],
    };
    if (!isMeasured(a) || !isMeasured(b)) {
      const missing = [a, b].flatMap((one) => (isMeasured(one) ? [] : [one.missing]));
      const text = 'Two figures cannot be held against each other.';
      return [{ ...base, outcome: 'not-evaluable', inputsMissing: missing, text }];
    }
    const fires = compare(a.value, b.value) > 0;
    return [
      {
        ...base,
        outcome: fires ? 'fires' : 'does-not-fire',
        severity: order.severity,
        inputsMissing: [],
        text: `${measureName(context, small.measure)} ${figureText(a)}, ${measureName(context, great.measure)} ${figureText(b)}${fires ? `: ${order.why}` : ''}.`,
      },
    ];
  });
}

/** `node-short` and `node-long` are one measure under two conditions. */
function statementsOf({ index }: CheckContext, measure: string): readonly Measurement[] {
  const axis = /^node-(short|long)$/.exec(measure)?.[1];
  if (axis === undefined) return index.about('measurement', measure);
  return index
    .about('measurement', 'node-size')
    .filter(({ conditions = [] }) => conditions.includes(`${axis}-axis`));
}

function together(a: Measurement, b: Measurement): boolean {
  if (!sidesOverlap(a.side, b.side)) return false;
  if (a.about !== undefined || b.about !== undefined) return a.about === b.about;
  return a.region === b.region && a.place === b.place;
}

const apart = exact('1') as Exact; // a literal decimal

/** Equal pupils, and two figures under one light that differ by more than 1 mm. */
function equalPupils(context: CheckContext): readonly RuleFinding[] {
  const [equal] = context.index
    .about('finding', 'pupil-equality.equal')
    .filter(({ presence }) => presence === 'present');
  if (equal === undefined) return [];
  const sized = context.index.about('measurement', 'pupil-diam').flatMap((statement) => {
    const figure = wholeFigureOf(context, statement);
    return isMeasured(figure) ? [figure] : [];
  });
  const light = ({ statement }: Measured): string =>
    [...(statement.conditions ?? [])].sort().join();
  return sized.flatMap((one, at) => {
    const other = sized
      .slice(at + 1)
      .find((each) => each.statement.side !== one.statement.side && light(each) === light(one));
    if (other === undefined) return [];
    const fires = compare(absolute(subtract(one.value, other.value)), apart) > 0;
    return [
      {
        outcome: fires ? ('fires' as const) : ('does-not-fire' as const),
        on: equal.key,
        inputsUsed: [equal.key, one.statement.key, other.statement.key],
        inputsMissing: [],
        text: `Pupils called equal: ${figureText(one)} and ${figureText(other)}.`,
      },
    ];
  });
}
