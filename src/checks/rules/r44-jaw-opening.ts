import type { CheckContext } from '../context.ts';
import { conditionsOf, figureText, isMeasured, measured, measureName } from '../facts/measured.ts';
import { ageAtLeast } from '../facts/stated.ts';
import { type OneSide, sideText } from '../places/sides.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';
import type { ThresholdId } from '../settings/thresholds.ts';
import { listText } from '../words/check-words.ts';
import { englishChecks } from '../words/english.ts';

const ADULT = 18;

interface Figure {
  readonly measure: string;
  readonly side?: OneSide;
  readonly limits: readonly ThresholdId[];
  /** Condition without which the limit does not apply. */
  readonly condition?: string;
}

const figures: readonly Figure[] = [
  { measure: 'mio', limits: ['jaw-opening', 'jaw-opening-trismus', 'jaw-opening-impaired'] },
  { measure: 'mio-assist', limits: ['jaw-opening-assisted'], condition: 'overlap-included' },
  { measure: 'lat-exc', side: 'right', limits: ['jaw-lateral', 'jaw-lateral-impaired'] },
  { measure: 'lat-exc', side: 'left', limits: ['jaw-lateral', 'jaw-lateral-impaired'] },
  { measure: 'protrusion', limits: ['jaw-protrusion-impaired'] },
];

/** Fires when the jaw opens or moves less than a published limit for adults; names each limit. */
export const r44JawOpening: ComputationRule = {
  id: 'R44',
  title: 'Opening and travel of the jaw',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source:
    'limits as listed in the thresholds: Dijkstra 2006, van der Geer 2019, Swiss Dental Journal, dental pages',
  evidence: 'second-hand',
  run: (context) => figures.flatMap((figure) => figureFinding(context, figure)),
};

function figureFinding(context: CheckContext, asked: Figure): readonly RuleFinding[] {
  const { measure, side, limits, condition } = asked;
  const applying = limits.flatMap((id) => context.limit(id) ?? []);
  const stated = context.index.about('measurement', measure);
  if (stated.length === 0 || applying.length === 0) return [];
  const name = `${measureName(context, measure)} ${sideText(side)}`.trim();
  const base = { on: `${measure} ${side ?? ''}`.trim(), ...(side !== undefined && { side }) };
  const figure = measured(context, measure, side);
  const adult = ageAtLeast(context, ADULT);
  const missing = [
    ...(isMeasured(figure) ? [] : [figure.missing]),
    ...(adult.holds === false ? ['a limit for this age'] : adult.missing),
  ];
  if (
    isMeasured(figure) &&
    condition !== undefined &&
    !conditionsOf(figure.statement).includes(condition)
  ) {
    missing.push(`the condition ${condition}`);
  }
  if (!isMeasured(figure) || missing.length > 0) {
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsUsed: isMeasured(figure) ? [figure.statement.key] : [],
        inputsMissing: missing,
        text: `${name}: it cannot be held to a limit for adults.`,
      },
    ];
  }
  const met = applying.filter((limit) => limit.meets(figure.value));
  return [
    {
      ...base,
      outcome: met.length > 0 ? 'fires' : 'does-not-fire',
      inputsUsed: [figure.statement.key, ...adult.used],
      inputsMissing: [],
      text:
        met.length > 0
          ? `${name} ${figureText(figure)}: ${listText(
              englishChecks,
              met.map((limit) => `${limit.title.toLowerCase()}, ${limit.text} (${limit.source})`),
            )}.`
          : `${name} ${figureText(figure)}: not below a limit for adults.`,
    },
  ];
}
