import type { state } from '../../model/builder/draft.ts';
import type { Side } from '../../model/primitive.ts';
import type { Attribute, Finding, Reason, RegionState } from '../../model/statement.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { AttributeConcept, FindingConcept, Lean, Region } from '../../terminology/types.ts';
import { maybe, type Sampling, sampleDecimal, sampleDetails, sampleText } from './sampling.ts';

/** A statement without its key, which the draft gives. */
export type Stated = Parameters<typeof state>[1];

interface Site {
  readonly region: string;
  readonly side?: Side;
  readonly place?: string;
}

/** What is said of one region: its state by side, what was found there, and what was looked for. */
export function regionStatements(sampling: Sampling, region: Lean<Region>): Stated[] {
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
      ...findings(sampling, region, site, { absent: random.int(0, 2), present: 0 }),
    ];
  }
  const present = state === 'abnormal' ? random.int(1, 2) : 0;
  return [
    stateOf(head, state, { methods }),
    ...findings(sampling, region, site, { absent: random.int(0, 2), present }),
  ];
}

function stateOf(head: object, state: RegionState['state'], rest: object): Stated {
  // Each state is called with what it needs; parseExam checks the whole exam in the tests.
  return { kind: 'region-state', ...head, state, ...rest } as Stated;
}

export function sampleReason(sampling: Sampling, why: 'not-examined' | 'not-applicable'): Reason {
  const { random, catalogue } = sampling;
  const rows = [...catalogue.reasons.values()].filter(
    ({ dataAbsentReason }) =>
      (dataAbsentReason === 'not-applicable') === (why === 'not-applicable'),
  );
  return {
    code: random.pick(rows).code,
    ...(maybe(sampling, 0.2) && { text: sampleText(sampling) }),
  };
}

function findings(
  sampling: Sampling,
  region: Lean<Region>,
  site: Site,
  wanted: { readonly present: number; readonly absent: number },
): Stated[] {
  const { random } = sampling;
  const expected = expectedFindings(sampling, region);
  const signs = expected.filter(({ usual }) => usual !== true);
  const found = oneOfEachFeature(random.some(signs, wanted.present));
  const others = signs.filter((sign) => !found.includes(sign) && sign.feature === undefined);
  return [
    ...found.map((sign) => present(sampling, sign, site)),
    ...random.some(others, wanted.absent).map((sign) => missing(sampling, sign, site)),
  ];
}

/** Signs that the tables expect in a region, in it or in a group above it. */
function expectedFindings({ catalogue }: Sampling, region: Lean<Region>): Lean<FindingConcept>[] {
  const above = new Set<string>();
  // Four levels in the built-in tree; a set ends a cycle in added regions.
  for (let at: string | undefined = region.code; at !== undefined && !above.has(at); ) {
    above.add(at);
    at = catalogue.regions.get(at)?.parent;
  }
  return [...catalogue.findings.values()].filter(({ regions }) =>
    regions.some((place) => above.has(place)),
  );
}

function oneOfEachFeature(signs: readonly Lean<FindingConcept>[]): Lean<FindingConcept>[] {
  const seen = new Set<string>();
  return signs.filter(({ feature }) => {
    if (feature === undefined) return true;
    if (seen.has(feature)) return false;
    seen.add(feature);
    return true;
  });
}

function present(sampling: Sampling, sign: Lean<FindingConcept>, site: Site): Stated {
  const { random, catalogue } = sampling;
  const methods = random.some(catalogue.regions.get(site.region)?.methods ?? [], random.int(0, 2));
  const attributes = attributesOf(sampling, sign);
  const finding: Omit<Finding, 'key'> = {
    kind: 'finding',
    finding: sign.code,
    presence: 'present',
    ...site,
    ...sampleDetails(sampling),
    ...(methods.length > 0 && { methods }),
    ...(maybe(sampling, sign.disorder ? 0.7 : 0.1) && {
      certainty: random.pick(['suspected', 'confirmed'] as const),
    }),
    ...(attributes.length > 0 && { attributes }),
    ...(maybe(sampling, 0.2) && { tracking: `lesion/${random.int(1, 999)}` }),
  };
  return finding;
}

function missing(sampling: Sampling, sign: Lean<FindingConcept>, site: Site): Stated {
  const { random } = sampling;
  return {
    kind: 'finding',
    finding: sign.code,
    presence: random.chance(0.93) ? 'absent' : 'indeterminate',
    ...site,
    ...sampleDetails(sampling),
    ...(maybe(sampling, 0.05) && { tracking: `lesion/${random.int(1, 999)}` }),
  };
}

function attributesOf(sampling: Sampling, sign: Lean<FindingConcept>): Attribute[] {
  const { random, catalogue } = sampling;
  const rows = [...catalogue.attributes.values()].filter(
    ({ family }) => family === sign.attributes,
  );
  return random.some(rows, random.int(0, 4)).map((row) => ({
    attribute: row.code,
    value: attributeValue(sampling, row),
  }));
}

function attributeValue({ random }: Sampling, row: Lean<AttributeConcept>): Attribute['value'] {
  switch (row.type) {
    case 'boolean':
      return random.chance(0.5);
    case 'count':
      return random.int(0, 12);
    case 'code':
      return random.pick(row.values ?? []).code;
    case 'quantity':
      return {
        value: sampleDecimal(random, 1, 20, random.int(0, 1)),
        unit: row.unit ?? '1',
        ...(random.chance(0.2) && { comparator: random.pick(['<', '<=', '>=', '>'] as const) }),
      };
  }
}
