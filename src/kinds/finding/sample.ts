import type { Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { AttributeConcept, FindingConcept, Lean, Region } from '../../terminology/types.ts';
import { type Item, type ItemValue, itemCodes } from '../../testing/formats/item.ts';
import {
  maybe,
  type Sampling,
  type Stated,
  sampleDecimal,
  sampleDetails,
} from '../../testing/sample/sampling.ts';
import { type KindSample, methodsOf } from '../facets/sample.ts';
import type { Attribute, Finding } from './statement.ts';

/** A place in a region that is spoken of. */
export interface Site {
  readonly region: string;
  readonly side?: Side;
  readonly place?: string;
}

export const findingSample: KindSample<Finding> = {
  drawn: { drawnWith: 'region-state' },
  items: (finding, groups) => {
    const { region, side, methods, at, note, presence, certainty } = finding;
    const group = groups.get(finding.key);
    const first: Item = {
      region,
      side,
      methods,
      code: itemCodes.finding(finding.finding),
      value: { word: certainty ?? presence },
      at,
      note,
      group,
    };
    const attributes = (finding.attributes ?? []).map(
      ({ attribute, value }): Item => ({
        code: itemCodes.attribute(finding.finding, attribute),
        region,
        side,
        group,
        value: itemValue(value),
      }),
    );
    return [first, ...attributes];
  },
  arrives: (finding, _, work) => methodsOf(finding, work),
};

/** Findings that are there, in the order of the exam. */
export function presentIn(statements: readonly Statement[]): Finding[] {
  return statements.filter(
    (one): one is Finding => one.kind === 'finding' && one.presence === 'present',
  );
}

function itemValue(value: Attribute['value']): ItemValue {
  if (typeof value === 'string') return { word: value };
  if (typeof value === 'boolean') return { word: value ? 'yes' : 'no' };
  if (typeof value === 'number') return { count: value };
  return { number: value.value, comparator: value.comparator, unit: value.unit };
}

/** Signs found in a place of a region, and signs looked for in vain. */
export function drawFindings(
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
