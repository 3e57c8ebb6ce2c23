import { alike, otherExceptions, whenConfirmed } from '../../checks/compare/verdicts.ts';
import { cover, markMethods, sidesIn } from '../../checks/coverage/marks.ts';
import type { ExamIndex } from '../../checks/exam-index.ts';
import { methodsMeet } from '../../checks/facts/signs.ts';
import { excepts, sameExceptions } from '../../checks/places/exceptions.ts';
import { isWithin } from '../../checks/places/regions.ts';
import { sidesOverlap } from '../../checks/places/sides.ts';
import type { Key } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { KindCheck, KindComparison, Verdict } from '../facets/check.ts';
import type { RegionState } from '../region-state/statement.ts';
import type { Attribute, Finding } from './statement.ts';

const comparison: KindComparison<Finding> = {
  tracking: ({ tracking }) => tracking,
  change: whenConfirmed(({ statement: now }, { statement: before }): Verdict => {
    if (now.presence === 'indeterminate' || before.presence === 'indeterminate') {
      return { change: 'not-comparable', reason: 'it could not be decided in one of the exams' };
    }
    if (now.presence !== before.presence) {
      if (!methodsMeet(now.methods, before.methods))
        return { change: 'not-comparable', reason: 'methods differ' };
      return { change: now.presence === 'present' ? 'new' : 'gone' };
    }
    const values = { before: attributesText(before), now: attributesText(now) };
    if (values.before !== values.now) return { change: 'changed', values };
    if (!sameExceptions(now, before)) return otherExceptions;
    return alike;
  }),
  /**
   * Another value of the same feature at its place denies a sign, or the place normal by a method
   * that finds the sign.
   */
  denied: (finding, side, other, catalogue) => {
    if (finding.presence !== 'present') return undefined;
    const feature = catalogue.findings.get(finding.finding)?.feature;
    const here = (one: Finding | RegionState): boolean =>
      isWithin(catalogue, finding.region, one.region) &&
      sidesOverlap(one.side, side) &&
      !excepts(catalogue, one, { region: finding.region, ...(side !== undefined && { side }) });
    const others = feature === undefined ? [] : (other.features.get(feature) ?? []);
    if (others.some((one) => one.finding !== finding.finding && here(one))) return 'denied';
    const stated = other.index.about('finding', finding.finding);
    if (stated.some((one) => one.presence === 'absent' && here(one))) return 'denied';
    const state = other.index.about('region-state', finding.region).find(here);
    return state === undefined ? undefined : deniedByState(state, finding);
  },
};

/** A sign that was looked for covers its region in part: of what else is there it says nothing. */
export const findingCheck: KindCheck<Finding> = {
  cover: (finding, marker) => {
    const { region, side, methods = [] } = finding;
    const sides = sidesIn(marker, region, side);
    for (const one of sides) {
      cover(marker, { kind: 'region', code: region, side: one }, finding, true);
    }
    markMethods(marker, region, sides, finding, methods, true);
  },
  comparison,
};

export function isFinding(statement: Statement | undefined): statement is Finding {
  return statement?.kind === 'finding';
}

/** Key of the followed lesion of the finding with this key: what is measured or scored of it is of it. */
export function trackingOfFinding(about: Key | undefined, index: ExamIndex): Key | undefined {
  const statement = about === undefined ? undefined : index.byKey.get(about);
  return isFinding(statement) ? statement.tracking : undefined;
}

function attributesText(finding: Finding): string {
  return (finding.attributes ?? []).map(attributeText).sort().join('; ');
}

function attributeText({ attribute, value }: Attribute): string {
  const text =
    typeof value === 'object'
      ? `${value.comparator ?? ''}${value.value} ${value.unit}`
      : String(value);
  return `${attribute} ${text}`;
}

function deniedByState(state: RegionState, finding: Finding): 'denied' | string | undefined {
  if (state.state === 'not-examined') return 'the region was not examined in one of the exams';
  if (state.state === 'not-applicable') return 'the structure is not there in one of the exams';
  if (state.state !== 'normal') return undefined;
  const { methods } = finding;
  if (methods === undefined || methods.some((method) => state.methods.includes(method))) {
    return 'denied';
  }
  return 'methods differ: the region was called normal by another method';
}
