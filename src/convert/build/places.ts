import type { Code } from '../../model/primitive.ts';
import type { Finding, Presence } from '../../model/statement.ts';
import type { StateWithReason } from '../mapping.ts';
import type { ConditionTarget, FindingTarget, NoteTarget, RegionStateTarget } from '../target.ts';
import {
  type Builder,
  isState,
  noRegion,
  type Problem,
  placed,
  type Reading,
  reasonOf,
  type Unkeyed,
  unknownWord,
} from './built.ts';

const presences: readonly string[] = ['present', 'absent', 'indeterminate'] satisfies Presence[];
const certainties: readonly string[] = ['suspected', 'confirmed'] satisfies Certainty[];

type Certainty = NonNullable<Finding['certainty']>;

export const buildFinding: Builder<FindingTarget> = ({ target }, reading, plan) => {
  const { region = target.region, meaning } = reading;
  if (region === undefined) return noRegion;
  if (isState(meaning)) return regionState(region, reading, meaning);
  const place = placed(region, reading);
  const { finding } = target;
  if (finding === undefined) {
    if (meaning === undefined || !plan.catalogue.findings.has(meaning)) {
      return unknownWord('a word for a finding');
    }
    return { statements: [{ kind: 'finding', ...place, finding: meaning, presence: 'present' }] };
  }
  if (isCertainty(meaning)) {
    const sure = { presence: 'present', certainty: meaning } as const;
    return { statements: [{ kind: 'finding', ...place, finding, ...sure }] };
  }
  if (!isPresence(meaning)) return unknownWord('a word for present, absent or indeterminate');
  return { statements: [{ kind: 'finding', ...place, finding, presence: meaning }] };
};

export const buildRegionState: Builder<RegionStateTarget> = ({ target }, reading) => {
  const { region = target.region, meaning, methods } = reading;
  if (region === undefined) return noRegion;
  if (isState(meaning)) return regionState(region, reading, meaning);
  if (meaning !== 'normal' && meaning !== 'abnormal') {
    return unknownWord('a word for normal, abnormal, or a state with its reason');
  }
  if (methods === undefined) return noMethod;
  return {
    statements: [{ kind: 'region-state', ...placed(region, reading), methods, state: meaning }],
  };
};

export const buildNote: Builder<NoteTarget> = ({ target }, reading) => {
  const { region = target.region, side, at, text } = reading;
  return {
    statements: [
      {
        kind: 'note',
        ...(region !== undefined && { region }),
        ...(side !== undefined && { side }),
        ...(at !== undefined && { at }),
        text,
      },
    ],
  };
};

export const buildCondition: Builder<ConditionTarget> = ({ target }, reading, plan) => {
  const { region = target.region, side, meaning } = reading;
  const values = plan.catalogue.conditions.get(target.condition)?.values ?? [];
  const known = values.some(({ code }) => code === meaning);
  // A condition without a list of values is stated by the word `yes` alone.
  const bare = values.length === 0 && meaning === 'yes';
  if (typeof meaning !== 'string' || !(known || bare)) {
    return unknownWord(`a word for a value of the condition ${target.condition}`);
  }
  return {
    condition: {
      condition: target.condition,
      ...(known && { value: meaning }),
      ...(region !== undefined && { regions: [region] }),
      ...(side !== undefined && { side }),
    },
  };
};

const noMethod: Problem = {
  problem: 'missing-method',
  message: 'a region can not be called normal or abnormal without the method',
  expected: 'a method in the mapping or in a field of the record',
};

function regionState(
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

function isCertainty(meaning: unknown): meaning is Certainty {
  return typeof meaning === 'string' && certainties.includes(meaning);
}

function isPresence(meaning: unknown): meaning is Presence {
  return typeof meaning === 'string' && presences.includes(meaning);
}
