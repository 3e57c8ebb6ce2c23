import type { Unkeyed } from './build/built.ts';
import { keyPart } from './note.ts';

/**
 * What a statement is about, as the start of its key. It does not depend on rows or order, so that
 * the same exam exported anew gets the same keys and with them the same resource ids.
 */
export function subjectKey(statement: Unkeyed): string {
  const parts = [statement.kind, ...about(statement)];
  if ('side' in statement && statement.side !== undefined) parts.push(statement.side);
  if (statement.at !== undefined) parts.push(statement.at);
  return keyPart(parts.join(':'));
}

function about(statement: Unkeyed): string[] {
  switch (statement.kind) {
    case 'finding':
      return [statement.region, statement.finding];
    case 'region-state':
      return [statement.region];
    case 'sensation':
      return [statement.point];
    case 'sensation-comparison':
      return [statement.point, statement.modality];
    case 'movement':
    case 'function-test':
      return [statement.test];
    case 'measurement':
      return [statement.measure, statement.region, ...(statement.conditions ?? [])];
    case 'scale-score':
      return [statement.scale, statement.version, ...(statement.region ? [statement.region] : [])];
    case 'symptom':
      return [statement.symptom, ...(statement.region ? [statement.region] : [])];
    default:
      return 'region' in statement && statement.region ? [statement.region] : [];
  }
}

/** Gives out keys: the first asker of a name gets it as it is, the next one with `.2`. */
export function keyGiver(): (name: string) => string {
  const times = new Map<string, number>();
  return (name) => {
    const count = (times.get(name) ?? 0) + 1;
    times.set(name, count);
    return count === 1 ? name : `${name}.${count}`;
  };
}
