import type { Mapping } from '../terminology/types.ts';

/**
 * The mappings that stand beside a code of ours. A wider code says less of what is there, and is
 * right; of what is absent, suspected or not to be decided (`strict`) it would say more than the
 * examiner did. Narrower and related codes never stand for ours.
 */
export function mappingsBeside<M extends Pick<Mapping, 'relation'>>(
  maps: readonly M[] = [],
  strict = false,
): readonly M[] {
  return maps.filter(
    ({ relation }) => relation === 'equivalent' || (relation === 'wider' && !strict),
  );
}
