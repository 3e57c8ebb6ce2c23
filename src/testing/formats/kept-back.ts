import { isUnconfirmed } from '../../kinds/facets/base.ts';
import type { Statement } from '../../model/statement.ts';

/**
 * The loss by which a statement is left out, since as an item it would say too much: no item can say
 * of what a statement does not speak, nor that it was taken over and not looked at again.
 */
export function keptBack(statement: Statement): 'unconfirmed' | 'exceptions' | undefined {
  if (isUnconfirmed(statement)) return 'unconfirmed';
  return 'except' in statement && statement.except !== undefined ? 'exceptions' : undefined;
}
