import { UCUM } from '../../fhir/names/systems.ts';
import { precisionOf } from '../../fhir/quantity.ts';
import type { Coding, Identifier, Quantity } from '../../model/primitive.ts';
import {
  claimEqual,
  decimalOf,
  type Element,
  innersOf,
  lookAt,
  lookAtList,
  peek,
  textOf,
  uriOf,
  wordOf,
} from '../bundle/element.ts';

const comparators = ['<', '<=', '>=', '>'] as const;
const uses = ['usual', 'official', 'temp', 'secondary', 'old'] as const;

/** A quantity in UCUM. */
export function quantityOf(quantity: Element | undefined): Quantity | undefined {
  if (quantity === undefined) return undefined;
  return quantity.claims.attempt(() => {
    const value = preciseValue(quantity);
    const unit = textOf(quantity, 'code');
    if (value === undefined || unit === undefined || /\s/.test(unit)) return undefined;
    if (!claimEqual(quantity, 'system', UCUM)) return undefined;
    claimEqual(quantity, 'unit', unit);
    const comparator = wordOf(quantity, 'comparator', comparators);
    return { value, unit, ...(comparator !== undefined && { comparator }) };
  });
}

/** The value with the decimal places that its precision tells, where a store has lost them. */
function preciseValue(quantity: Element): string | undefined {
  const value = decimalOf(quantity, 'value');
  if (value === undefined) return undefined;
  const [whole = '', places = ''] = value.split('.');
  for (const precision of precisionsOf(quantity)) {
    if (precision < places.length || precision > 17) continue;
    const precise = precision === 0 ? whole : `${whole}.${places.padEnd(precision, '0')}`;
    if (claimEqual(quantity, '_value', precisionOf(precise)._value)) return precise;
  }
  return value;
}

function precisionsOf(quantity: Element): number[] {
  const companion = lookAt(quantity, '_value');
  return (companion ? lookAtList(companion, 'extension') : []).flatMap((extension) => {
    const places = peek(extension, 'valueInteger');
    return typeof places === 'number' && Number.isSafeInteger(places) && places >= 0 ? places : [];
  });
}

/** A coding that is kept as it is. */
export function codingOf(coding: Element): Coding | undefined {
  return coding.claims.attempt(() => {
    const system = uriOf(coding, 'system');
    const code = textOf(coding, 'code');
    if (system === undefined || code === undefined || !/^\S+( \S+)*$/.test(code)) return undefined;
    if (code.length > 200) return undefined;
    const version = textOf(coding, 'version');
    const display = textOf(coding, 'display');
    return {
      system,
      ...(version !== undefined && { version }),
      code,
      ...(display !== undefined && { display }),
    };
  });
}

export function codingsOf(codings: readonly Element[]): Coding[] {
  return codings.flatMap((coding) => codingOf(coding) ?? []);
}

/** Identifiers that have a system and a value. */
export function identifiersOf(identifiers: readonly Element[]): Identifier[] {
  return identifiers.flatMap((identifier) => identifierOf(identifier) ?? []);
}

export function identifierOf(identifier: Element): Identifier | undefined {
  return identifier.claims.attempt(() => {
    const system = uriOf(identifier, 'system');
    const value = textOf(identifier, 'value');
    if (system === undefined || value === undefined) return undefined;
    const use = wordOf(identifier, 'use', uses);
    return { system, value, ...(use !== undefined && { use }) };
  });
}

export function identifierList(element: Element): Element[] {
  return innersOf(element, 'identifier');
}

/** Order of what has no order of its own: by key. */
export function byKey(a: { readonly key: string }, b: { readonly key: string }): number {
  return a.key < b.key ? -1 : 1;
}

/** The list where it has entries; the model knows no empty lists. */
export function filled<T>(list: readonly T[]): readonly [T, ...T[]] | undefined {
  const [first, ...rest] = list;
  return first === undefined ? undefined : [first, ...rest];
}
