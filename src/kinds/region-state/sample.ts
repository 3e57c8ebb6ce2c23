import type { Side } from '../../model/primitive.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Region } from '../../terminology/types.ts';
import { itemCodes, stateWord } from '../../testing/formats/item.ts';
import {
  amounts,
  maybe,
  type Sampling,
  type Stated,
  sampleDetails,
  sampleReason,
  sampleText,
  sitedRegions,
} from '../../testing/sample/sampling.ts';
import { type KindSample, methodsOf } from '../facets/sample.ts';
import { drawFindings, type Site } from '../finding/sample.ts';
import type { RegionState } from './statement.ts';

export const regionStateSample: KindSample<RegionState> = {
  drawn: {
    examined: (sampling) => () =>
      sampling.random
        .some(sitedRegions(sampling), amounts[sampling.size].regions)
        .flatMap((region) => regionStatements(sampling, region)),
  },
  items: (statement) => {
    const { region, side, methods, at, note } = statement;
    const value = { word: stateText(statement) };
    return [{ region, side, methods, at, note, code: itemCodes.state, value }];
  },
  arrives: (statement, _, work) => {
    const told = methodsOf(statement, work);
    if (told.state === 'partial') return { ...told, limit: work.without('reason', told.limit) };
    return 'reason' in told ? { ...told, reason: work.without('reason', told.reason) } : told;
  },
};

/** What is said of one region: its state by side, what was found there, and what was looked for. */
function regionStatements(sampling: Sampling, region: Lean<Region>): Stated[] {
  return sitesOf(sampling, region).flatMap((site) => siteStatements(sampling, region, site));
}

/** The sides of a region that are spoken of, each by itself; now and then both in one. */
function sitesOf(sampling: Sampling, region: Lean<Region>): Site[] {
  const { random, size } = sampling;
  const { sides, required } = lateralitySides[region.laterality];
  const named = (side: Side | undefined): Site => ({
    region: region.code,
    ...(side !== undefined && { side }),
    ...(maybe(sampling, 0.03) && { place: sampleText(sampling) }),
  });
  if (!required) return [named(random.chance(0.8) ? undefined : random.pick(sides))];
  if (random.chance(0.2)) return [named('both')];
  if (region.laterality === 'paired') {
    const both = [named('right'), named('left')];
    return size === 'full' || random.chance(0.7) ? both : [random.pick(both)];
  }
  return random.some(sides, random.int(1, 2)).map(named);
}

const outcomes = [
  ...Array.from({ length: 12 }, () => 'normal' as const),
  ...Array.from({ length: 5 }, () => 'abnormal' as const),
  'partial',
  'partial',
  'not-examined',
  'not-examined',
  'not-applicable',
] as const;

function siteStatements(sampling: Sampling, region: Lean<Region>, site: Site): Stated[] {
  const { random } = sampling;
  const state = random.pick(outcomes);
  const methods = random.some(region.methods, random.int(1, 3));
  const head = { ...site, ...sampleDetails(sampling) };
  if (state === 'not-examined' || state === 'not-applicable' || methods.length === 0) {
    const kind = state === 'not-applicable' ? state : 'not-examined';
    return [stateOf(head, kind, { reason: sampleReason(sampling, kind) })];
  }
  if (state === 'partial') {
    return [
      stateOf(head, state, { methods, limit: sampleReason(sampling, 'not-examined') }),
      ...drawFindings(sampling, region, site, { absent: random.int(0, 2), present: 0 }),
    ];
  }
  const present = state === 'abnormal' ? random.int(1, 2) : 0;
  return [
    stateOf(head, state, { methods }),
    ...drawFindings(sampling, region, site, { absent: random.int(0, 2), present }),
  ];
}

function stateOf(head: object, state: RegionState['state'], rest: object): Stated {
  // Each state is called with what it needs; parseExam checks the whole exam in the tests.
  return { kind: 'region-state', ...head, state, ...rest } as Stated;
}

function stateText(statement: RegionState): string {
  switch (statement.state) {
    case 'normal':
    case 'abnormal':
      return statement.state;
    case 'partial':
      return stateWord(statement.state, statement.limit.code);
    default:
      return stateWord(statement.state, statement.reason.code);
  }
}
