import type { CheckContext } from '../context.ts';
import { alsoMissing, every, type Fact, knownBy, some, unknown } from '../facts/fact.ts';
import { conditionsOf, isMeasured, keysOf, measured, missingOf } from '../facts/measured.ts';
import { background, sign, symptom } from '../facts/stated.ts';
import { compare, type Exact, subtract, whole } from '../figures/decimal.ts';
import { type OneSide, oneSides, otherSide } from '../places/sides.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

/** Side difference of the lids, in mm, that is a ptosis where nobody has named one. */
const LOWER = whole(1);
const eye = ['inspection', 'inspection-magnified'];

/**
 * Ptosis with a small pupil on the same side. The sign is enough and so is the figure; the figure
 * never takes a sign away, since half a millimetre is within the error of a ruler and 1 to 2 mm
 * describes typical cases and excludes none. Loss of sweating is not asked for.
 */
export const r18Horner: PromptRule = {
  id: 'R18',
  title: 'Slight ptosis with a small pupil on the same side',
  kind: 'prompt',
  ruleSet: 'horner-signs',
  version: '2',
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
  const recent = background(context, 'recent-injury');
  const trauma = recent.holds === true ? recent : background(context, 'previous-trauma');
  const raised = some([pain, trauma]);
  const fact = signs.holds === true ? alsoMissing(withUsed(signs, raised), pain, trauma) : signs;
  const urgent = raised.holds === true;
  return promptFinding(context, fact, {
    on: side,
    side,
    urgency: urgent ? 'same-day' : 'weeks',
    says: urgent ? 'horner-pain' : 'horner',
  });
}

function withUsed(fact: Fact, other: Fact): Fact {
  return {
    ...fact,
    used: [...new Set([...fact.used, ...(other.holds === true ? other.used : [])])],
  };
}

/** The sign, or without it a lid that stands lower than the other. */
function ptosis(context: CheckContext, side: OneSide): Fact {
  const coded = sign(context, {
    finding: 'lid-position.ptosis',
    regions: ['lid-upper'],
    side,
    by: eye,
  });
  const own = measured(context, 'mrd1', side);
  const other = measured(context, 'mrd1', otherSide(side));
  const both = isMeasured(own) && isMeasured(other);
  if (coded.holds === true) {
    return both ? coded : alsoMissing(coded, { ...unknown(), missing: missingOf(own, other) });
  }
  if (!both) return coded;
  const lower = compare(subtract(other.value, own.value), LOWER) >= 0;
  return lower || coded.holds === undefined ? knownBy(lower, keysOf(own, other)) : coded;
}

/** The sign, or without it a pupil that is smaller than the other, more so in the dark. */
function smallPupil(context: CheckContext, side: OneSide): Fact {
  const coded = sign(context, { finding: 'pupil-small', regions: ['pupil'], side, by: eye });
  const figures = unknown(context.words.phrases.pupils);
  const dark = smallerBy(context, side, 'dark');
  const light = smallerBy(context, side, 'light');
  const both = dark !== undefined && light !== undefined;
  if (coded.holds === true) return both ? coded : alsoMissing(coded, figures);
  if (!both) return coded.holds === false ? coded : figures;
  const small = dark.by.digits > 0n && compare(dark.by, light.by) > 0;
  return small || coded.holds === undefined ? knownBy(small, [...dark.used, ...light.used]) : coded;
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
