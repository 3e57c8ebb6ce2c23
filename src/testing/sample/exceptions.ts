import type { ExceptedPlace } from '../../kinds/facets/base.ts';
import { sayingsOf, standingOf } from '../../kinds/registries/meanings.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Region } from '../../terminology/types.ts';
import { createRandom } from '../random.ts';
import { maybe, type Sampling, type Stated, sitedRegions } from './sampling.ts';

/**
 * What is said of a whole group of regions: that it is normal, or that a sign is not there, but for
 * the members of which the exam says otherwise or does not know.
 */
export function drawGroups(given: Sampling, statements: readonly Statement[]): Stated[] {
  // A stream of its own, so that what is drawn after it stays what it was.
  const random = createRandom(given.random.seed ^ statements.length);
  const sampling: Sampling = { ...given, random };
  const { catalogue } = sampling;
  if (!maybe(sampling, 0.4)) return [];
  const group = random.pick([...catalogue.regions.values()].filter((one) => one.group === true));
  const signs = [...catalogue.findings.values()].filter(
    ({ usual, feature, regions }) =>
      usual !== true &&
      feature === undefined &&
      regions.some((place) => isWithin(group.code, place, catalogue)),
  );
  const head = { ...sideOf(group), except: exceptionsIn(sampling, group, statements) };
  const isSign = signs.length > 0 && random.chance(0.6);
  return [
    isSign
      ? { kind: 'finding', finding: random.pick(signs).code, presence: 'absent', ...head }
      : { kind: 'region-state', state: 'normal', methods: ['inspection'], ...head },
  ];
}

function sideOf({ code, laterality }: Lean<Region>): {
  readonly region: string;
  readonly side?: 'both';
} {
  return { region: code, ...(lateralitySides[laterality].required && { side: 'both' }) };
}

/** Every member that is not known to be normal, and at least one. */
function exceptionsIn(
  sampling: Sampling,
  group: Lean<Region>,
  statements: readonly Statement[],
): readonly [ExceptedPlace, ...ExceptedPlace[]] {
  const { catalogue, random } = sampling;
  const [first, ...more] = openPlaces(catalogue, group, statements);
  if (first !== undefined) return [first, ...more];
  const members = sitedRegions(sampling).filter(({ code }) =>
    isWithin(code, group.code, catalogue),
  );
  const { code, laterality } = random.pick(members);
  const { sides, required } = lateralitySides[laterality];
  return [{ region: code, ...(required && { side: random.pick(sides) }) }];
}

function openPlaces(
  catalogue: Catalogue,
  group: Lean<Region>,
  statements: readonly Statement[],
): readonly ExceptedPlace[] {
  const places = new Map<string, ExceptedPlace>();
  for (const one of statements) {
    const { region, side } = standingOf(one, catalogue);
    const open = sayingsOf(one, catalogue).some(
      ({ polarity, of }) =>
        polarity !== 'denies' && (of.table === 'regions' || of.table === 'findings'),
    );
    if (region === undefined || !open) continue;
    if (region === group.code || !isWithin(region, group.code, catalogue)) continue;
    places.set(`${region} ${side}`, { region, ...(side !== undefined && { side }) });
  }
  return [...places.values()];
}
