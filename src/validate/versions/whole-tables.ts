import type { Tables } from '../elements/definitions.ts';
import { terminology } from '../tables/terminology.ts';
import { terminology as terminologyRest } from '../tables/terminology-rest.ts';

type Whole = Tables & { readonly resourceTypes: readonly string[] };
type Held = Omit<Whole, 'terminology' | 'published'>;
type Rest = Required<
  Pick<Tables, 'types' | 'extensions' | 'codeSystems' | 'valueSets' | 'published'>
>;

/** The tables of the types that the library writes and of all others, as those of one version. */
export function wholeTables(held: Held, rest: Rest): Whole {
  return {
    resourceTypes: held.resourceTypes,
    primitives: held.primitives,
    types: { ...held.types, ...rest.types },
    extensions: { ...held.extensions, ...rest.extensions },
    codeSystems: { ...held.codeSystems, ...rest.codeSystems },
    terminology: { ...terminology, ...terminologyRest },
    valueSets: { ...held.valueSets, ...rest.valueSets },
    published: rest.published,
  };
}
