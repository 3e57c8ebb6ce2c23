import {
  isState,
  noRegion,
  type Problem,
  placed,
  type Reading,
  reasonOf,
  type Unkeyed,
  unknownWord,
} from '../../convert/build/built.ts';
import { issue } from '../../convert/issue.ts';
import type { StateWithReason } from '../../convert/mapping/mapping.ts';
import type { RegionStateTarget } from '../../convert/mapping/target.ts';
import { tableOf } from '../../convert/prepare/make-plan.ts';
import type { Code } from '../../model/primitive.ts';
import {
  exceptionIssues,
  type StatementConversion,
  type TargetConversion,
} from '../facets/conversion.ts';
import type { RegionState } from './statement.ts';

export const regionStateConversion: StatementConversion<RegionState> = {
  about: ({ region }) => [region],
};

export const regionStateTarget: TargetConversion<RegionStateTarget> = {
  codes: () => [],
  needs: 'region',
  meanings: () => ['normal', 'abnormal'],
  states: ['not-examined', 'not-applicable', 'partial'],
  issues: (target, path, prepared) => {
    const { supplied, mapping } = prepared;
    const misplaced = exceptionIssues(target, path, prepared);
    const given =
      target.methods !== undefined || target.methodFrom !== undefined || supplied.method;
    const meanings = Object.values(tableOf(target.words, mapping) ?? {});
    const examined = meanings.some(
      (meaning) => meaning === 'normal' || meaning === 'abnormal' || isPartial(meaning),
    );
    if (!examined || given) return misplaced;
    return [...misplaced, issue('missing-method', [...path, 'methods'], { reason: 'mapping' })];
  },
  build: ({ target }, reading) => {
    const { region = target.region, meaning, methods } = reading;
    if (region === undefined) return noRegion;
    if (isState(meaning)) return regionState(region, reading, meaning);
    if (meaning !== 'normal' && meaning !== 'abnormal') {
      return unknownWord({ reason: 'state' });
    }
    if (methods === undefined) return noMethod;
    const stated = { kind: 'region-state', ...placed(region, reading), methods } as const;
    if (meaning === 'abnormal') return { statements: [{ ...stated, state: meaning }] };
    const { except } = target;
    return { statements: [{ ...stated, state: meaning, ...(except && { except }) }] };
  },
};

function isPartial(meaning: unknown): boolean {
  return (
    typeof meaning === 'object' &&
    meaning !== null &&
    'state' in meaning &&
    meaning.state === 'partial'
  );
}

const noMethod: Problem = {
  problem: 'missing-method',
  facts: { reason: 'record' },
};

/** The state of a region that a word tells with its reason; a finding's word can tell it too. */
export function regionState(
  region: Code,
  reading: Reading,
  meaning: StateWithReason,
): { statements: readonly Unkeyed[] } | Problem {
  const place = placed(region, reading);
  const reason = reasonOf(meaning);
  if (meaning.state !== 'partial') {
    return { statements: [{ kind: 'region-state', ...place, state: meaning.state, reason }] };
  }
  const { methods } = reading;
  if (methods === undefined) return noMethod;
  return {
    statements: [{ kind: 'region-state', ...place, methods, state: 'partial', limit: reason }],
  };
}
