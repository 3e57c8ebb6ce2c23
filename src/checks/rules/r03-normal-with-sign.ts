import { ruleTitles } from '../../issues/english/rules.ts';
import type { Finding, Measurement, Normal, RegionState } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { listIn } from '../exam-index.ts';
import { isAbnormal, methodsMeet } from '../facts/signs.ts';
import { rangeVerdicts } from '../figures/ranges.ts';
import { excepts } from '../places/exceptions.ts';
import { lineage, regionName } from '../places/regions.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/**
 * Fires when a region is called normal and a sign stands in it, or a value outside a chosen range.
 * An error where both can rest on one method; a warning where the methods differ.
 */
export const r03NormalWithSign: ConsistencyRule = {
  id: 'R03',
  title: ruleTitles.R03,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'contradiction',
  source: 'common practice, no source',
  evidence: 'common-practice',
  run: (context) => {
    const normal = context.index.all('region-state').filter(isNormal);
    if (normal.length === 0) return [];
    const signs = signsByRegion(context);
    const values = valuesByRegion(context);
    const found = normal.flatMap((state) => [
      ...(signs.get(state.region) ?? [])
        .filter((sign) => sidesOverlap(sign.side, state.side))
        .filter((sign) => !excepts(context.catalogue, state, sign))
        .map((sign) => clash(context, state, sign)),
      ...(values.get(state.region) ?? [])
        .filter((value) => sidesOverlap(value.side, state.side))
        .filter((value) => !excepts(context.catalogue, state, value))
        .map((value) => valueClash(context, state, value)),
    ]);
    if (found.some((one) => one.outcome === 'fires')) return found;
    return [
      ...found,
      {
        outcome: 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: `No abnormal sign stands in the ${normal.length} region(s) called normal.`,
      },
    ];
  },
};

function isNormal(state: RegionState): state is Normal {
  return state.state === 'normal';
}

/** Abnormal and undecided signs under each region that holds them, however high in the tree. */
function signsByRegion({ index, catalogue }: CheckContext): ReadonlyMap<string, Finding[]> {
  const signs = new Map<string, Finding[]>();
  for (const finding of index.all('finding')) {
    if (finding.presence !== 'indeterminate' && !isAbnormal(finding, catalogue)) continue;
    for (const region of lineage(catalogue, finding.region)) listIn(signs, region).push(finding);
  }
  return signs;
}

function valuesByRegion(context: CheckContext): ReadonlyMap<string, Measurement[]> {
  const values = new Map<string, Measurement[]>();
  for (const { statement, verdict } of rangeVerdicts(context)) {
    if (verdict === 'outside') listIn(values, statement.region).push(statement);
  }
  return values;
}

function clash({ catalogue }: CheckContext, state: Normal, sign: Finding): RuleFinding {
  const oneMethod = methodsMeet(sign.methods, state.methods);
  const region = regionName(catalogue, state.region);
  const base = {
    on: state.key,
    ...(state.side !== undefined && { side: state.side }),
    inputsUsed: [state.key, sign.key],
  };
  if (sign.presence === 'indeterminate') {
    return {
      ...base,
      outcome: 'not-evaluable',
      inputsMissing: ['whether the sign is there'],
      text: `${region}: called normal, and a sign there could not be decided.`,
    };
  }
  return {
    ...base,
    outcome: 'fires',
    severity: oneMethod ? 'error' : 'check',
    inputsMissing: [],
    text: oneMethod
      ? `${region}: called normal, and an abnormal sign is stated there.`
      : `${region}: called normal by one method, and an abnormal sign is stated there by another.`,
  };
}

function valueClash({ catalogue }: CheckContext, state: Normal, value: Measurement): RuleFinding {
  return {
    outcome: 'fires',
    on: state.key,
    ...(state.side !== undefined && { side: state.side }),
    severity: 'check',
    inputsUsed: [state.key, value.key],
    inputsMissing: [],
    text: `${regionName(catalogue, state.region)}: called normal, and a value there is outside the chosen range.`,
  };
}
