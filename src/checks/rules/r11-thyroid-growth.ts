import { measuredIn } from '../../kinds/measurement/check.ts';
import type { Comparison } from '../compare/comparison.ts';
import type { CheckContext } from '../context.ts';
import { listIn } from '../exam-index.ts';
import { compare, type Exact, exact, multiply, subtract, whole } from '../figures/decimal.ts';
import { baseValue } from '../figures/units.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

/** Growth of a thyroid nodule: enough of a gain, in percent and in millimetres, in two dimensions. */
export const r11ThyroidGrowth: ComputationRule = {
  id: 'R11',
  title: 'Growth of a thyroid nodule',
  kind: 'computation',
  version: '1',
  severity: 'check',
  source:
    'Durante C et al. 2015, JAMA: 20 % or more and 2 mm or more in two dimensions, by ultrasound',
  evidence: 'read',
  run: (context) => {
    const nodules = new Map<string, Comparison[]>();
    for (const one of measuredIn(context.comparisons)) {
      if (one.code !== 'thyroid-nodule') continue;
      listIn(nodules, one.tracking ?? `${one.region ?? ''} ${one.side ?? ''}`).push(one);
    }
    return [...nodules].flatMap(([nodule, axes]) => growth(context, nodule, axes));
  },
};

function growth(
  context: CheckContext,
  nodule: string,
  axes: readonly Comparison[],
): readonly RuleFinding[] {
  const percent = context.limit('thyroid-growth-percent');
  const size = context.limit('thyroid-growth-size');
  const percentValue = percent && exact(percent.value);
  if (percentValue === undefined || size === undefined) return [];
  const compared = axes.flatMap((axis) => gainOf(axis) ?? []);
  const grown = compared.filter(
    ({ gain, before }) =>
      // gain / before >= percent / 100, without a division
      compare(multiply(gain, whole(100)), multiply(percentValue, before)) >= 0 && size.meets(gain),
  );
  const base = {
    on: nodule,
    inputsUsed: axes.flatMap((axis) => axis.now ?? []),
  };
  if (grown.length < 2 && compared.length < 2) {
    const why = axes.flatMap((axis) => axis.reason ?? []);
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsMissing: ['two dimensions measured alike in both exams', ...new Set(why)],
        text: 'Growth of the thyroid nodule cannot be told.',
      },
    ];
  }
  const fires = grown.length >= 2;
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      inputsMissing: [],
      text: fires
        ? 'Thyroid nodule: growth by the criterion of Durante. The criterion is one of ultrasound; a size by touch is an estimate.'
        : 'Thyroid nodule: no growth by the criterion of Durante.',
      values: [{ name: 'dimensions grown', value: String(grown.length) }],
    },
  ];
}

/** Gain and size before in mm; undefined where the two could not be compared. */
function gainOf({
  figures,
}: Comparison): { readonly gain: Exact; readonly before: Exact } | undefined {
  if (figures === undefined) return undefined;
  const before = baseValue(figures.before.value, figures.before.unit)?.value;
  const now = baseValue(figures.now.value, figures.now.unit)?.value;
  if (before === undefined || now === undefined || before.digits <= 0n) return undefined;
  return { gain: subtract(now, before), before };
}
