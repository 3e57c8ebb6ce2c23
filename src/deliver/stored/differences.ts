import { decimalText } from '../../fhir/json/decimal.ts';
import type { Path } from '../../issues/path.ts';

export interface Difference {
  readonly path: Path;
  readonly kind: 'added' | 'dropped' | 'changed';
}

/**
 * What of `sent` is different in `received`; the order of properties does not count, the precision
 * of decimals does.
 */
export function differences(sent: unknown, received: unknown): Difference[] {
  const found: Difference[] = [];
  compare(sent, received, [], found);
  return found;
}

function compare(sent: unknown, received: unknown, path: Path, found: Difference[]): void {
  if (isHolder(sent) && isHolder(received) && Array.isArray(sent) === Array.isArray(received)) {
    for (const step of stepsOf(sent, received)) {
      compareAt(sent, received, step, [...path, step], found);
    }
  } else if (sent !== received) {
    found.push({ path, kind: 'changed' });
  }
}

function compareAt(
  sent: object,
  received: object,
  step: string | number,
  path: Path,
  found: Difference[],
): void {
  const name = String(step);
  const before = own(sent, name);
  const after = own(received, name);
  if (before === undefined || after === undefined) {
    if (before !== after) found.push({ path, kind: before === undefined ? 'added' : 'dropped' });
  } else if (typeof before === 'number' && typeof after === 'number') {
    if (decimalText(sent, name) !== decimalText(received, name)) {
      found.push({ path, kind: 'changed' });
    }
  } else {
    compare(before, after, path, found);
  }
}

function stepsOf(sent: object, received: object): Iterable<string | number> {
  if (Array.isArray(sent) && Array.isArray(received)) {
    return Array.from({ length: Math.max(sent.length, received.length) }, (_, at) => at);
  }
  return new Set([...Object.keys(sent), ...Object.keys(received)]);
}

function own(holder: object, name: string): unknown {
  return Object.getOwnPropertyDescriptor(holder, name)?.value;
}

function isHolder(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
