import {
  type Built,
  isState,
  noRegion,
  type Problem,
  placed,
  type Reading,
  type Unkeyed,
  unknownWord,
} from '../../convert/build/built.ts';
import { quantityParts, readQuantity } from '../../convert/build/quantity.ts';
import type { Plan } from '../../convert/mapping/plan.ts';
import type { AttributeTarget, FindingTarget } from '../../convert/mapping/target.ts';
import { wordMap } from '../../convert/mapping/word-map.ts';
import { readNumber } from '../../convert/values/number.ts';
import type { Code } from '../../model/primitive.ts';
import {
  exceptionIssues,
  type StatementConversion,
  type TargetConversion,
} from '../facets/conversion.ts';
import { regionState } from '../region-state/convert.ts';
import type { Attribute, Finding, Presence } from './statement.ts';

const presences: readonly string[] = ['present', 'absent', 'indeterminate'] satisfies Presence[];
const certainties: readonly string[] = ['suspected', 'confirmed'] satisfies Certainty[];

type Certainty = NonNullable<Finding['certainty']>;

/** Whether what came from outside names itself a finding. */
export function namesFinding(value: { readonly kind?: unknown }): boolean {
  return value.kind === 'finding';
}

export const findingConversion: StatementConversion<Finding> = {
  about: ({ region, finding }) => [region, finding],
};

/** The finding among statements that have no key yet. */
export function unkeyedFinding(statement: Unkeyed | undefined): Omit<Finding, 'key'> | undefined {
  return statement?.kind === 'finding' ? statement : undefined;
}

export const findingTarget: TargetConversion<FindingTarget> = {
  codes: ({ finding, normal }) => [
    ['findings', finding, 'finding'],
    ...(normal?.methods ?? []).map((code) => ['methods', code, 'normal'] as const),
  ],
  needs: 'region',
  meanings: ({ finding }, catalogue) =>
    finding === undefined ? [...catalogue.findings.keys()] : [...presences, ...certainties],
  states: ['not-examined', 'not-applicable', 'partial'],
  issues: exceptionIssues,
  build: ({ target }, reading, plan) => {
    const normal = normalRegion(target, reading, plan);
    if (normal !== undefined) return normal;
    const { meaning } = reading;
    const { finding, presence = 'present' } = target;
    const named = finding ?? (typeof meaning === 'string' ? meaning : undefined);
    const region = reading.region ?? target.region ?? onlyRegion(named, presence, plan);
    if (region === undefined) return noRegion;
    if (isState(meaning)) return regionState(region, reading, meaning);
    const place = placed(region, reading);
    if (finding === undefined) {
      if (meaning === undefined || !plan.catalogue.findings.has(meaning)) {
        return unknownWord({ reason: 'finding' });
      }
      return absentBut(target, { kind: 'finding', ...place, finding: meaning, presence });
    }
    if (isCertainty(meaning)) {
      const sure = { presence: 'present', certainty: meaning } as const;
      return { statements: [{ kind: 'finding', ...place, finding, ...sure }] };
    }
    if (!isPresence(meaning))
      return unknownWord({ reason: 'one-of', codes: ['present', 'absent', 'indeterminate'] });
    return absentBut(target, { kind: 'finding', ...place, finding, presence: meaning });
  },
};

/** The state of the region that is named, where a word says that nothing amiss was found there. */
function normalRegion(
  { normal, region: own, except }: FindingTarget,
  reading: Reading,
  { mapping }: Plan,
): Built | undefined {
  const [method, ...methods] = normal?.methods ?? [];
  if (normal === undefined || method === undefined || reading.meaning !== undefined)
    return undefined;
  const words = Object.fromEntries(normal.words.map((word) => [word, true]));
  if (!wordMap(words, mapping.ignoreCase ?? false).has(reading.text)) return undefined;
  const region = reading.region ?? own;
  if (region === undefined) return noRegion;
  const place = { ...placed(region, reading), methods: [method, ...methods] as const };
  const stated = { kind: 'region-state', ...place, state: 'normal' } as const;
  return { statements: [{ ...stated, ...(except && { except }) }] };
}

/** What is absent is not said of the members that the target leaves out. */
function absentBut({ except }: FindingTarget, stated: Omit<Finding, 'key'>): Built {
  const excepting = stated.presence === 'absent' && except !== undefined;
  return { statements: [excepting ? { ...stated, except } : stated] };
}

/** The one region that a finding can have. What is absent is not said to be absent in all of a group. */
function onlyRegion(
  finding: Code | undefined,
  presence: Presence,
  { catalogue }: Plan,
): Code | undefined {
  const [region, other] = catalogue.findings.get(finding ?? '')?.regions ?? [];
  if (region === undefined || other !== undefined) return undefined;
  return presence === 'absent' && catalogue.regions.get(region)?.group ? undefined : region;
}

export const attributeTarget: TargetConversion<AttributeTarget> = {
  codes: ({ finding, attribute }) => [
    ['findings', finding, 'finding'],
    ['attributes', attribute, 'attribute'],
  ],
  needs: 'region',
  meanings: ({ attribute }, catalogue) => {
    const row = catalogue.attributes.get(attribute);
    return row?.type === 'boolean' ? ['yes', 'no'] : (row?.values ?? []).map(({ code }) => code);
  },
  states: [],
  build: ({ target }, reading, plan) => {
    const { region = target.region, side } = reading;
    if (region === undefined) return noRegion;
    const value = attributeValue(target, reading, plan);
    if (typeof value === 'object' && 'problem' in value) return value;
    return {
      attribute: {
        finding: target.finding,
        region,
        ...(side !== undefined && { side }),
        value: { attribute: target.attribute, value },
      },
    };
  },
};

function attributeValue(
  target: AttributeTarget,
  reading: Reading,
  plan: Plan,
): Attribute['value'] | Problem {
  const { meaning } = reading;
  const row = plan.catalogue.attributes.get(target.attribute);
  switch (row?.type) {
    case 'boolean':
      return meaning === 'yes' || meaning === 'no'
        ? meaning === 'yes'
        : unknownWord({ reason: 'one-of', codes: ['yes', 'no'] });
    case 'count': {
      const number = readNumber(reading.text, plan.decimalMark);
      if (
        typeof number === 'string' ||
        number.suffix ||
        number.comparator ||
        /\D/.test(number.value)
      ) {
        return { problem: 'not-a-number', facts: { reason: 'count' } };
      }
      return Number(number.value);
    }
    case 'quantity': {
      const quantity = readQuantity(reading, target.unit, plan);
      return 'problem' in quantity ? quantity : quantityParts(quantity);
    }
    default: {
      const codes = (row?.values ?? []).map(({ code }) => code);
      const known = typeof meaning === 'string' && codes.includes(meaning);
      return known ? meaning : unknownWord({ reason: 'one-of', codes });
    }
  }
}

function isCertainty(meaning: unknown): meaning is Certainty {
  return typeof meaning === 'string' && certainties.includes(meaning);
}

function isPresence(meaning: unknown): meaning is Presence {
  return typeof meaning === 'string' && presences.includes(meaning);
}
