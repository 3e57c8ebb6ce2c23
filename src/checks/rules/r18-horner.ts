import type { CheckContext } from '../context.ts';
import { alsoMissing, every, type Fact, knownBy, some, unknown } from '../facts/fact.ts';
import { conditionsOf, isMeasured, keysOf, measured, missingOf } from '../facts/measured.ts';
import { background, sign, symptom } from '../facts/stated.ts';
import { compare, type Exact, subtract, whole } from '../figures/decimal.ts';
import { type OneSide, oneSides, otherSide } from '../places/sides.ts';
import { promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'horner-signs';
/** Ptosis of these signs, in mm; more suggests another cause. */
const LEAST = whole(1);
const MOST = whole(2);
const eye = ['inspection', 'inspection-magnified'];

/** Slight ptosis with a small pupil on the same side. Loss of sweating is not asked for. */
export const r18Horner: PromptRule = {
  id: 'R18',
  title: 'Slight ptosis with a small pupil on the same side',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
  severity: 'prompt',
  source:
    'PLoS Medicine 2005, doi 10.1371/journal.pmed.0020019 (1 mm, no loss of sweating); AAO subspecialty day 2011 (1 to 2 mm)',
  evidence: 'read',
  run: (context) => oneSides.map((side) => sideFinding(context, side)),
};

function sideFinding(context: CheckContext, side: OneSide): RuleFinding {
  const signs = every([ptosis(context, side), smallPupil(context, side)]);
  const pain = some([
    symptom(context, 'sym-neck.pain'),
    symptom(context, 'sym-general.headache'),
    symptom(context, 'sym-eye.pain'),
  ]);
  const trauma = background(context, 'previous-trauma');
  const raised = some([pain, trauma]);
  const fact = signs.holds === true ? alsoMissing(withUsed(signs, raised), pain, trauma) : signs;
  const urgent = raised.holds === true;
  return promptFinding(set, fact, {
    on: side,
    side,
    advice: urgent
      ? `Consider urgent assessment of the neck vessels and of the path of the sympathetic nerve: slight ptosis and a small pupil on the ${side}, with pain or injury.`
      : `Consider assessment for a cause along the path of the sympathetic nerve: slight ptosis and a small pupil on the ${side}. Ask for pain of head and neck and for injury, which would make it urgent.`,
    criterion: `Slight ptosis with a small pupil on the ${side}`,
    severity: urgent ? 'urgent' : 'prompt',
  });
}

function withUsed(fact: Fact, other: Fact): Fact {
  return {
    ...fact,
    used: [...new Set([...fact.used, ...(other.holds === true ? other.used : [])])],
  };
}

/** The lid lower by 1 to 2 mm than the other; without figures the sign itself. */
function ptosis(context: CheckContext, side: OneSide): Fact {
  const own = measured(context, 'mrd1', side);
  const other = measured(context, 'mrd1', otherSide(side));
  if (isMeasured(own) && isMeasured(other)) {
    const lower = subtract(other.value, own.value);
    const slight = compare(lower, LEAST) >= 0 && compare(lower, MOST) <= 0;
    return knownBy(slight, keysOf(own, other));
  }
  const coded = sign(context, {
    finding: 'lid-position.ptosis',
    regions: ['lid-upper'],
    side,
    by: eye,
  });
  return coded.holds === true
    ? alsoMissing(coded, { holds: undefined, used: [], missing: missingOf(own, other) })
    : coded;
}

/** The pupil smaller than the other, more so in the dark; without figures the sign itself. */
function smallPupil(context: CheckContext, side: OneSide): Fact {
  const dark = smallerBy(context, side, 'dark');
  const light = smallerBy(context, side, 'light');
  if (dark !== undefined && light !== undefined) {
    const small = dark.by.digits > 0n && compare(dark.by, light.by) > 0;
    return knownBy(small, [...dark.used, ...light.used]);
  }
  const coded = sign(context, { finding: 'pupil-small', regions: ['pupil'], side, by: eye });
  const figures = unknown('both pupils in the dark and in the light');
  if (coded.holds === true) return alsoMissing(coded, figures);
  return coded.holds === false ? coded : figures;
}

/** By how much the pupil is smaller than the other in one light. */
function smallerBy(
  context: CheckContext,
  side: OneSide,
  light: string,
): { readonly by: Exact; readonly used: readonly string[] } | undefined {
  const wanted = (statement: Parameters<typeof conditionsOf>[0]): boolean =>
    conditionsOf(statement).includes(light);
  const own = measured(context, 'pupil-diam', side, wanted);
  const other = measured(context, 'pupil-diam', otherSide(side), wanted);
  if (!isMeasured(own) || !isMeasured(other)) return undefined;
  return { by: subtract(other.value, own.value), used: keysOf(own, other) };
}
