import { innerOf, peek } from '../../read/bundle/element.ts';
import { ownCode, ownValue } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { claimCommon, methodsOf, type Observed } from '../../read/observation/observation.ts';
import { absentReasonOf, reasonOf } from '../../read/observation/reason.ts';
import { exceptionsOf, siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import type { RegionState } from './statement.ts';

export const regionStateReader: Reader<RegionState> = {
  of: ({ table, code }) => table === 'items' && code === 'region-state',
  read: readRegionState,
  undone: ({ state }) => state === 'not-examined',
};

function readRegionState(
  observed: Observed,
  key: string | undefined,
): Read<RegionState> | undefined {
  const { reading, element, components } = observed;
  const except = exceptionsOf(observed);
  const site = siteOf(observed, except);
  const code = ownCode(reading, innerOf(element, 'code'), 'items');
  if (site === undefined || code === undefined || except === undefined) return undefined;
  const methods = methodsOf(observed);
  const place = components.text('place');
  const codings = filled(codingsOf(code.further));
  const shared = {
    kind: 'region-state',
    ...site,
    ...(place !== undefined && { place }),
    ...(codings && { codings }),
  } as const;
  const state = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'state');
  // Exceptions that cannot be kept are never dropped: the statement would say more than it does.
  if (except.length > 0 && state !== 'normal') return undefined;
  if (state === undefined)
    return unexamined(observed, key, { ...shared, ...(methods && { methods }) });

  claimCommon(observed, key, { category: 'exam' });
  if (methods === undefined) return undefined;
  switch (state) {
    case 'normal':
      return { ...shared, state, methods, ...(except.length > 0 && { except }) };
    case 'abnormal':
      return { ...shared, state, methods };
    case 'partial': {
      const component = components.first('limit');
      const limit = component && reasonOf(reading, innerOf(component, 'valueCodeableConcept'));
      return limit && { ...shared, state, methods, limit };
    }
    default:
      return undefined;
  }
}

function unexamined(
  observed: Observed,
  key: string | undefined,
  shared: Omit<Read<RegionState & { readonly state: 'not-examined' }>, 'state' | 'reason'>,
): Read<RegionState> | undefined {
  const { reading, element } = observed;
  const stated = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'), 'values');
  // Before 0.2 this state alone made an observation `cancelled`.
  const undone = peek(element, 'status') === 'cancelled';
  switch (stated?.state) {
    case 'state.not-examined':
      claimCommon(observed, key, { category: 'exam', ...(undone && { status: 'cancelled' }) });
      return { ...shared, state: 'not-examined', reason: stated.reason };
    case 'state.not-applicable':
      claimCommon(observed, key, { category: 'exam' });
      return { ...shared, state: 'not-applicable', reason: stated.reason };
    default:
      return undefined;
  }
}
