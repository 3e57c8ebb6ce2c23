import type { CheckContext } from '../context.ts';
import {
  isMeasured,
  keysOf,
  type Measured,
  measuredPairs,
  missingOf,
  type Pair,
} from '../facts/measured.ts';
import { absolute, compare, decimalText, subtract } from '../figures/decimal.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

/** Difference of the pupils in each light, and in which light it is greater. */
export const r43Pupils: ComputationRule = {
  id: 'R43',
  title: 'Difference of the pupils',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source:
    'Lam BL et al. 1987, PubMed 3605282: 0.4 mm or more in about 19 % of healthy people at one examination',
  evidence: 'read',
  run: (context) => {
    const pairs = measuredPairs(context, 'pupil-diam');
    return [...pairs.map((pair) => oneLight(context, pair)), ...twoLights(pairs)];
  },
};

function oneLight(context: CheckContext, { conditions, right, left }: Pair): RuleFinding {
  const light = conditions.join(' ') || 'light not stated';
  const base = {
    on: light,
    inputsUsed: keysOf(right, left),
    inputsMissing: missingOf(right, left),
  };
  if (!isMeasured(right) || !isMeasured(left)) {
    return { ...base, outcome: 'not-evaluable', text: `Pupils, ${light}: one side is missing.` };
  }
  const size = absolute(subtract(right.value, left.value));
  const fires = context.limit('pupil-difference')?.meets(size) === true;
  const common = context.limit('pupil-difference-common')?.meets(size) === true;
  const smaller = smallerSide(right, left);
  const words = common ? ', as found in many healthy people' : '';
  return {
    ...base,
    outcome: fires ? 'fires' : 'does-not-fire',
    ...(smaller !== undefined && { side: smaller }),
    text: `Pupils, ${light}: difference ${decimalText(size)} mm${smaller === undefined ? '' : `, ${smaller} smaller`}${fires ? ', beyond the usual' : words}.`,
    values: [{ name: 'difference', value: decimalText(size), unit: 'mm' }],
  };
}

function twoLights(pairs: readonly Pair[]): readonly RuleFinding[] {
  if (pairs.length === 0) return [];
  const dark = pairs.find((pair) => pair.conditions.includes('dark'));
  const light = pairs.find((pair) => pair.conditions.includes('light'));
  const figures = [dark?.right, dark?.left, light?.right, light?.left];
  const taken = figures.filter((one): one is Measured => one !== undefined && isMeasured(one));
  const [darkRight, darkLeft, lightRight, lightLeft] = taken;
  if (
    taken.length < 4 ||
    darkRight === undefined ||
    darkLeft === undefined ||
    lightRight === undefined ||
    lightLeft === undefined
  ) {
    return [
      {
        outcome: 'not-evaluable',
        on: 'dark against light',
        inputsUsed: keysOf(...taken),
        inputsMissing: ['both pupils in the dark and in the light'],
        text: 'Whether the difference of the pupils changes with the light cannot be told.',
      },
    ];
  }
  const inDark = absolute(subtract(darkRight.value, darkLeft.value));
  const inLight = absolute(subtract(lightRight.value, lightLeft.value));
  const greater = compare(inDark, inLight);
  return [
    {
      outcome: greater === 0 ? 'does-not-fire' : 'fires',
      on: 'dark against light',
      inputsUsed: keysOf(...taken),
      inputsMissing: [],
      text: `Difference of the pupils: dark ${decimalText(inDark)} mm, light ${decimalText(inLight)} mm${greaterText(greater)}.`,
      values: [
        { name: 'dark', value: decimalText(inDark), unit: 'mm' },
        { name: 'light', value: decimalText(inLight), unit: 'mm' },
      ],
    },
  ];
}

function greaterText(order: number): string {
  if (order === 0) return ', the same in both';
  return order > 0 ? ', greater in the dark' : ', greater in the light';
}

function smallerSide(right: Measured, left: Measured): 'right' | 'left' | undefined {
  const order = compare(right.value, left.value);
  if (order === 0) return undefined;
  return order < 0 ? 'right' : 'left';
}
