import type { Path } from '../../issues/path.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Laterality, Lean, Protocol } from '../../terminology/types.ts';
import { lineage } from '../places/regions.ts';
import { type OneSide, oneSides } from '../places/sides.ts';
import type { CoverageItem } from './coverage.ts';
import type { CoveragePlace } from './places.ts';

/** One thing asked for, with the places in the marks where the answer would stand. */
export interface Required {
  readonly item: Omit<CoverageItem, 'status' | 'statements' | 'partial'>;
  /** Any of these covers it. */
  readonly own: readonly CoveragePlace[];
  /** A place of each list documents it: more than one list where it stands for both sides. */
  readonly documented: readonly (readonly CoveragePlace[])[];
}

interface Unknown {
  readonly table: string;
  readonly path: Path;
}

type Sides = readonly (OneSide | undefined)[];

/** The protocol written out: a group becomes every region below it, a paired region its two sides. */
export function requiredBy(
  protocol: Lean<Protocol>,
  catalogue: Catalogue,
): { readonly required: readonly Required[]; readonly unknown: readonly Unknown[] } {
  const unknown: Unknown[] = [];
  const required = [
    ...regionsOf(protocol, catalogue, unknown),
    ...pointsOf(protocol, catalogue, unknown),
    ...testsOf(protocol, catalogue, unknown),
    ...measuresOf(protocol, catalogue, unknown),
  ];
  return { required, unknown };
}

function regionsOf(protocol: Lean<Protocol>, catalogue: Catalogue, unknown: Unknown[]): Required[] {
  const asked = new Map<string, Set<string>>();
  protocol.regions.forEach((entry, at) => {
    const row = catalogue.regions.get(entry.region);
    if (row === undefined) unknown.push({ table: 'regions', path: ['regions', at, 'region'] });
    for (const region of row?.group === true ? below(catalogue, row.code) : [entry.region]) {
      const methods = asked.get(region) ?? new Set();
      asked.set(region, methods);
      const takes = catalogue.regions.get(region)?.methods ?? entry.methods;
      for (const method of entry.methods) {
        // A group asks of each region below it what that region takes.
        if (row?.group !== true || takes.includes(method)) methods.add(method);
      }
    }
  });
  return [...asked].flatMap(([region, methods]) => {
    const row = catalogue.regions.get(region);
    const base = { code: region, section: row?.section ?? 'general' };
    return sidesOf(row?.laterality).flatMap((side) => {
      const documented = [documentedPlaces(catalogue, region, side)];
      const sided = { ...base, ...(side !== undefined && { side }) };
      // A test made there by a method asked for covers the region too: hearing has no other state.
      const byMethod = [...methods].map(
        (method): CoveragePlace => ({ kind: 'method', code: region, side, detail: method }),
      );
      const own: CoveragePlace[] = [{ kind: 'region', code: region, side }, ...byMethod];
      return [
        { item: { kind: 'region' as const, ...sided }, own, documented },
        ...byMethod.map((place) => ({
          item: { kind: 'method' as const, ...sided, method: place.detail ?? '' },
          own: [place],
          documented,
        })),
      ];
    });
  });
}

function pointsOf(protocol: Lean<Protocol>, catalogue: Catalogue, unknown: Unknown[]): Required[] {
  return (protocol.points ?? []).flatMap(({ point, modalities }, at) => {
    const row = catalogue.testPoints.get(point);
    if (row === undefined) unknown.push({ table: 'testPoints', path: ['points', at, 'point'] });
    const base = { kind: 'point', code: point, section: row?.section ?? 'sensation' } as const;
    return sidesOf(row?.laterality).flatMap((side) =>
      modalities.map((modality) => {
        const own: CoveragePlace = { kind: 'point', code: point, side, detail: modality };
        return {
          item: { ...base, ...(side !== undefined && { side }), modality },
          own: [own],
          documented: [[own, ...documentedPlaces(catalogue, row?.region, side)]],
        };
      }),
    );
  });
}

function testsOf(protocol: Lean<Protocol>, catalogue: Catalogue, unknown: Unknown[]): Required[] {
  return (protocol.tests ?? []).flatMap((test, at) => {
    const row = catalogue.testPoints.get(test);
    if (row === undefined) unknown.push({ table: 'testPoints', path: ['tests', at] });
    const base = { kind: 'test', code: test, section: row?.section ?? 'function' } as const;
    return sidesOf(row?.laterality).map((side) => {
      const own: CoveragePlace = { kind: 'test', code: test, side };
      return {
        item: { ...base, ...(side !== undefined && { side }) },
        own: [own],
        documented: [[own, ...documentedPlaces(catalogue, row?.region, side)]],
      };
    });
  });
}

function measuresOf(
  protocol: Lean<Protocol>,
  catalogue: Catalogue,
  unknown: Unknown[],
): Required[] {
  return (protocol.measures ?? []).flatMap((measure, at) => {
    const row = catalogue.measures.get(measure);
    if (row === undefined) unknown.push({ table: 'measures', path: ['measures', at] });
    const section = catalogue.regions.get(row?.region ?? '')?.section ?? 'general';
    const base = { kind: 'measure', code: measure, section } as const;
    // The measure of something that can lie on either side is asked for once, wherever it lies.
    const sides = row?.laterality === 'crossing' ? [undefined] : sidesOf(row?.laterality);
    return sides.map((side) => {
      const own: CoveragePlace = { kind: 'measure', code: measure, side };
      const regionSides = side === undefined ? sidesOf(row?.laterality) : [side];
      return {
        item: { ...base, ...(side !== undefined && { side }) },
        own: [own],
        documented: regionSides.map((at) => [own, ...documentedPlaces(catalogue, row?.region, at)]),
      };
    });
  });
}

/** A region that was not examined documents everything below it and every test made there. */
function documentedPlaces(
  catalogue: Catalogue,
  region: string | undefined,
  side: OneSide | undefined,
): readonly CoveragePlace[] {
  if (region === undefined) return [];
  return lineage(catalogue, region).map((above) => ({ kind: 'region', code: above, side }));
}

/** Two sides where there are two; a crossing region is asked for on each side of its middle. */
function sidesOf(laterality: Laterality | undefined): Sides {
  return laterality === 'paired' || laterality === 'crossing' ? oneSides : [undefined];
}

/** Regions below a group that can be examined themselves. */
function below(catalogue: Catalogue, group: string): readonly string[] {
  return [...catalogue.regions.values()]
    .filter((row) => row.group !== true && lineage(catalogue, row.code).includes(group))
    .map((row) => row.code);
}
