import { ruleTitles } from '../../issues/english/rules.ts';
import type { Finding, RegionState } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { listIn } from '../exam-index.ts';
import { methodsMeet } from '../facts/signs.ts';
import { regionName } from '../places/regions.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when two states of one region cannot both hold, or a sign stands in a region not examined. */
export const r36ContradictoryStates: ConsistencyRule = {
  id: 'R36',
  title: ruleTitles.R36,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'contradiction',
  source: 'common practice, no source; openEHR keeps "examination not done" apart from findings',
  evidence: 'common-practice',
  run: (context) => {
    const states = context.index.all('region-state');
    if (states.length === 0) return [];
    const found = [...twoStates(context, states), ...signsWithout(context, states)];
    if (found.some((one) => one.outcome === 'fires')) return found;
    return [
      ...found,
      {
        outcome: 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: 'The states of the regions do not exclude each other.',
      },
    ];
  },
};

function twoStates(context: CheckContext, states: readonly RegionState[]): readonly RuleFinding[] {
  const regions = new Map<string, RegionState[]>();
  const found: RuleFinding[] = [];
  for (const state of states) {
    const here = listIn(regions, state.region);
    const against = here.find((other) => exclude(other, state));
    if (against !== undefined) {
      // Examined in part may well be normal or abnormal as far as it was seen.
      const partly = isPartly(state, against);
      found.push({
        outcome: partly ? 'not-evaluable' : 'fires',
        on: state.key,
        ...(state.side !== undefined && { side: state.side }),
        inputsUsed: [state.key, against.key],
        inputsMissing: partly ? ['what the partial examination left out'] : [],
        text: `${regionName(context.catalogue, state.region)}: called ${words(against)} and ${words(state)}.`,
      });
    }
    // Alike states add nothing to compare with, and leaving them out keeps long lists quick.
    if (!here.some((other) => alike(other, state))) here.push(state);
  }
  return found;
}

function exclude(a: RegionState, b: RegionState): boolean {
  if (a.state === b.state || !sidesOverlap(a.side, b.side)) return false;
  if (a.place !== undefined && b.place !== undefined && a.place !== b.place) return false;
  // "Normal to the eye, not palpated" is one sound statement in two.
  return methodsMeet(a.methods, b.methods);
}

function isPartly(a: RegionState, b: RegionState): boolean {
  const states = [a.state, b.state];
  return states.includes('partial') && !states.includes('not-applicable');
}

function alike(a: RegionState, b: RegionState): boolean {
  return (
    a.state === b.state &&
    a.side === b.side &&
    a.place === b.place &&
    a.methods?.join(' ') === b.methods?.join(' ')
  );
}

function signsWithout(
  context: CheckContext,
  states: readonly RegionState[],
): readonly RuleFinding[] {
  const undone = new Map<string, RegionState[]>();
  for (const state of states) {
    if (state.state !== 'not-examined' && state.state !== 'not-applicable') continue;
    listIn(undone, state.region).push(state);
  }
  return context.index.all('finding').flatMap((finding) => {
    const state = undone
      .get(finding.region)
      ?.find(
        (one) => sidesOverlap(one.side, finding.side) && methodsMeet(one.methods, finding.methods),
      );
    return state === undefined ? [] : [without(context, state, finding)];
  });
}

function without({ catalogue }: CheckContext, state: RegionState, finding: Finding): RuleFinding {
  return {
    outcome: 'fires',
    on: finding.key,
    ...(finding.side !== undefined && { side: finding.side }),
    inputsUsed: [finding.key, state.key],
    inputsMissing: [],
    text: `${regionName(catalogue, finding.region)}: a sign is stated, and the region is called ${words(state)}.`,
  };
}

function words(state: RegionState): string {
  return state.state === 'not-applicable' ? 'not there' : state.state.replace('-', ' ');
}
