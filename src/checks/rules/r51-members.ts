import { ruleTitles } from '../../issues/english/rules.ts';
import type { Finding, RegionState } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { listIn } from '../exam-index.ts';
import { methodsMeet } from '../facts/signs.ts';
import { excepts, openMembers } from '../places/exceptions.ts';
import { isWithin, regionName } from '../places/regions.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/**
 * Fires when a group of regions is called normal, or a sign not found in it, although a member was
 * not examined, only in part, is not there, or has the sign, and the statement does not except it.
 */
export const r51Members: ConsistencyRule = {
  id: 'R51',
  title: ruleTitles.R51,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'contradiction',
  source: 'common practice, no source; openEHR keeps "examination not done" apart from findings',
  evidence: 'common-practice',
  run: (context) => {
    const { catalogue, index } = context;
    const groups = [
      ...index.all('finding').filter((one) => one.presence === 'absent'),
      ...index.all('region-state').filter((one) => one.state === 'normal'),
    ].filter((one) => catalogue.regions.get(one.region)?.group === true);
    if (groups.length === 0) return [];
    const present = signsByCode(context);
    const found = groups.flatMap((group) =>
      [
        ...openMembers(catalogue, index.all('region-state'), group),
        ...('finding' in group ? (present.get(group.finding) ?? []) : []).filter((one) =>
          isFoundIn(context, one, group),
        ),
      ].flatMap((member) =>
        excepts(catalogue, group, member) ? [] : [notExcepted(context, group, member)],
      ),
    );
    if (found.length > 0) return found;
    return [
      {
        outcome: 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: 'What is said of groups of regions holds of every member that is not excepted.',
      },
    ];
  },
};

function signsByCode({ index }: CheckContext): ReadonlyMap<string, Finding[]> {
  const signs = new Map<string, Finding[]>();
  for (const one of index.all('finding')) {
    if (one.presence !== 'absent') listIn(signs, one.finding).push(one);
  }
  return signs;
}

function isFoundIn(
  { catalogue }: CheckContext,
  sign: Finding,
  group: Finding | RegionState,
): boolean {
  return (
    sign.region !== group.region &&
    isWithin(catalogue, sign.region, group.region) &&
    sidesOverlap(sign.side, group.side) &&
    methodsMeet(sign.methods, group.methods)
  );
}

function notExcepted(
  { catalogue }: CheckContext,
  group: Finding | RegionState,
  member: Finding | RegionState,
): RuleFinding {
  const said = 'finding' in group ? 'a sign is not found there' : 'called normal';
  const of = regionName(catalogue, member.region);
  const open = 'finding' in member && member.presence === 'indeterminate';
  return {
    outcome: open ? 'not-evaluable' : 'fires',
    on: group.key,
    ...(group.side !== undefined && { side: group.side }),
    inputsUsed: [group.key, member.key],
    inputsMissing: open ? ['whether the sign is there'] : [],
    text: `${regionName(catalogue, group.region)}: ${said}, and ${of} ${why(member)}: name it as an exception.`,
  };
}

function why(member: Finding | RegionState): string {
  if ('finding' in member) {
    return member.presence === 'present' ? 'has the sign' : 'may have the sign';
  }
  if (member.state === 'partial') return 'was examined in part only';
  return member.state === 'not-applicable' ? 'is not there' : 'was not examined';
}
