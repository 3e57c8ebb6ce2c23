import type { Path } from '../../issues/path.ts';
import type { Claims } from './claims.ts';

/** A part of a bundle that is not in the exam that was read from it. */
export interface Remainder {
  /** In the bundle. */
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
  'Resource.id',
  'Bundle.entry.fullUrl',
]);

/** Everything in `bundle` that nobody claimed: the largest unclaimed parts, in their order. */
export function remainderOf(
  bundle: object,
  claims: Claims,
  reasons: ReadonlyMap<object, string>,
): Remainder[] {
  const found: Remainder[] = [];
  // One path for the whole walk, copied only for what is told.
  const path: (string | number)[] = [];

  const tell = (value: unknown): void => {
    const inner = isEntry(value) ? value.resource : value;
    const at = isEntry(value) ? [...path, 'resource'] : [...path];
    const element = elementAt(bundle, at);
    const reason = isHolder(inner) ? reasons.get(inner) : undefined;
    found.push({
      path: at,
      what: reason === undefined ? element : `${element}: ${reason}`,
      kind: isBookkeeping(element) ? 'bookkeeping' : 'content',
    });
  };

  /** False when nothing in `holder` is claimed: it is then told whole, and not its parts. */
  const walk = (holder: object): boolean => {
    const start = found.length;
    let touched = false;
    for (const [step, value] of partsOf(holder)) {
      const claim = claims.claimOf(holder, step);
      path.push(step);
      const whole = claim !== undefined && (claim === 'all' || !isHolder(value) || walk(value));
      if (whole) touched = true;
      else tell(value);
      path.pop();
    }
    if (touched || isEmpty(holder) || isToldByParts(path)) return true;
    found.length = start;
    return false;
  };

  if (!walk(bundle)) tell(bundle);
  return found;
}

/** Entries are told one by one; and the parts of `meta`, since some are bookkeeping and some are not. */
function isToldByParts(path: Path): boolean {
  return path.at(-1) === 'meta' || (path.length === 1 && path[0] === 'entry');
}

function partsOf(holder: object): Iterable<readonly [string | number, unknown]> {
  return Array.isArray(holder) ? holder.entries() : Object.entries(holder);
}

function isEmpty(holder: object): boolean {
  return Object.keys(holder).length === 0;
}

function isHolder(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

/** An entry of a bundle, which is told as the resource that it holds. */
function isEntry(value: unknown): value is { readonly resource: unknown } {
  return (
    isHolder(value) &&
    resourceTypeOf('resource' in value ? value.resource : undefined) !== undefined
  );
}

/** `Patient.name` for a path that leads there from the bundle. */
function elementAt(bundle: object, path: Path): string {
  let element = 'Bundle';
  let value: unknown = bundle;
  for (const step of path) {
    // Each step was taken from an own property.
    value = (value as Readonly<Record<string | number, unknown>>)[step];
    if (typeof step === 'string') element += `.${step}`;
    element = resourceTypeOf(value) ?? element;
  }
  return element;
}

function isBookkeeping(element: string): boolean {
  return bookkeeping.has(element) || bookkeeping.has(element.replace(/^[A-Za-z]+/, 'Resource'));
}

function resourceTypeOf(value: unknown): string | undefined {
  if (!isHolder(value) || !('resourceType' in value)) return undefined;
  const { resourceType } = value;
  return typeof resourceType === 'string' && /^[A-Za-z]+$/.test(resourceType)
    ? resourceType
    : undefined;
}
