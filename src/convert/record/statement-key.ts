import { statementConversion } from '../../kinds/registries/conversions.ts';
import type { Unkeyed } from '../build/built.ts';
import { keyPart } from '../exams/note.ts';

/**
 * What a statement is about, as the start of its key. It does not depend on rows or order, so that
 * the same exam exported anew gets the same keys and with them the same resource ids.
 */
export function subjectKey(statement: Unkeyed): string {
  const parts = [statement.kind, ...statementConversion(statement).about(statement)];
  if ('side' in statement && statement.side !== undefined) parts.push(statement.side);
  if (statement.at !== undefined) parts.push(statement.at);
  return keyPart(parts.join(':'));
}

/**
 * Gives out keys: the first asker of a name gets it as it is, the next one with `.2`. A name that
 * ends so by itself, such as that of a component, goes on from there: no key is given twice.
 */
export function keyGiver(): (name: string) => string {
  const times = new Map<string, number>();
  const given = new Set<string>();
  return (name) => {
    let count = times.get(name) ?? 0;
    let key: string;
    do {
      count += 1;
      key = count === 1 ? name : `${name}.${count}`;
    } while (given.has(key));
    times.set(name, count);
    given.add(key);
    return key;
  };
}
