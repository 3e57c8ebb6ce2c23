import type { Path } from '../path.ts';
import type { Claims } from './claims.ts';

/** A part of a bundle that is not in the exam that was read from it. */
export interface Remainder {
  readonly path: Path;
  /** FHIR element or resource, with the reason where one is known: `Observation.method`. */
  readonly what: string;
  /** `bookkeeping`: what a server notes about its own storing, and no part of the record. */
  readonly kind: 'content' | 'bookkeeping';
}

/** Elements in which servers keep their own notes; a profile, tag or label is content. */
const bookkeeping: ReadonlySet<string> = new Set([
  'Bundle.id',
  'Bundle.meta.versionId',
  'Bundle.meta.lastUpdated',
  'Bundle.timestamp',
  'Bundle.total',
  'Bundle.link',
  'Bundle.entry.link',
  'Bundle.entry.search',
  'Bundle.entry.request',
  'Bundle.entry.response',
  'Resource.meta.versionId',
  'Resource.meta.lastUpdated',
  'Resource.meta.source',
]);

/** Everything in `bundle` that nobody claimed: the largest unclaimed parts, in their order. */
export function remainderOf(
  bundle: object,
  claims: Claims,
  reasons: ReadonlyMap<object, string>,
): Remainder[] {
  const found: Remainder[] = [];

  const tell = (value: unknown, path: Path, element: string): void => {
    if (element === 'Bundle.entry' && hasResource(value)) {
      tell(value.resource, [...path, 'resource'], resourceTypeOf(value.resource) ?? 'Resource');
      return;
    }
    const generic = element.replace(/^(?!Bundle\b)[A-Za-z]+/, 'Resource');
    const reason = typeof value === 'object' && value !== null ? reasons.get(value) : undefined;
    found.push({
      path,
      what: reason === undefined ? element : `${element}: ${reason}`,
      kind: bookkeeping.has(generic) ? 'bookkeeping' : 'content',
    });
  };

  /** True when something below `holder` is claimed; else nothing is told, for the holder to be told whole. */
  const walk = (holder: object, path: Path, element: string): boolean => {
    const steps = Array.isArray(holder) ? [...holder.keys()] : Object.keys(holder);
    if (steps.length === 0) return true;
    const start = found.length;
    let touched = false;
    for (const step of steps) {
      // The step is one of the holder's own.
      const value: unknown = (holder as Record<string | number, unknown>)[step];
      const claim = claims.claimOf(holder, step);
      const below = typeof step === 'number' ? element : `${element}.${step}`;
      const name = resourceTypeOf(value) ?? below;
      if (claim === 'all') touched = true;
      else if (claim === undefined) tell(value, [...path, step], name);
      else if (typeof value !== 'object' || value === null) touched = true;
      else if (walk(value, [...path, step], name)) touched = true;
      else tell(value, [...path, step], name);
    }
    // Each part of `meta` is told by itself, since some are bookkeeping and some are not.
    if (element.endsWith('.meta')) return true;
    if (!touched) found.length = start;
    return touched;
  };

  if (!walk(bundle, [], 'Bundle')) tell(bundle, [], 'Bundle');
  return found;
}

function hasResource(value: unknown): value is { readonly resource: unknown } {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, 'resource');
}

function resourceTypeOf(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null || !('resourceType' in value)) return undefined;
  return typeof value.resourceType === 'string' && /^[A-Za-z]+$/.test(value.resourceType)
    ? value.resourceType
    : undefined;
}
