import { decimalText } from '../../fhir/decimal.ts';
import {
  type Element,
  flagOf,
  innerOf,
  innersOf,
  lookAt,
  peek,
  textOf,
  wholeOf,
} from '../element.ts';

/** The words of a concept: its text, or the display or code of its first coding. */
export function conceptWords(holder: Element, name: string): string | undefined {
  const concept = innerOf(holder, name);
  if (concept === undefined) return undefined;
  const text = textOf(concept, 'text');
  if (text !== undefined) return text;
  const [coding] = innersOf(concept, 'coding');
  return coding && (textOf(coding, 'display') ?? textOf(coding, 'code'));
}

/** The value of an observation in words, as it is written there; undefined when it has none. */
export function valueWords(observation: Element): string | undefined {
  const quantity = innerOf(observation, 'valueQuantity');
  return (
    (quantity && quantityWords(quantity)) ??
    conceptWords(observation, 'valueCodeableConcept') ??
    textOf(observation, 'valueString') ??
    stringOf(flagOf(observation, 'valueBoolean')) ??
    stringOf(wholeOf(observation, 'valueInteger')) ??
    textOf(observation, 'valueDateTime') ??
    textOf(observation, 'valueTime')
  );
}

function stringOf(value: boolean | number | undefined): string | undefined {
  return value === undefined ? undefined : String(value);
}

function quantityWords(quantity: Element): string | undefined {
  const value = decimalText(quantity.json, 'value');
  if (value === undefined) return undefined;
  quantity.claims.claim(quantity.json, 'value');
  const comparator = textOf(quantity, 'comparator') ?? '';
  const unit = textOf(quantity, 'unit') ?? textOf(quantity, 'code') ?? '';
  return `${comparator}${value} ${unit}`.trim();
}

/** True when a concept holds more than its words. */
export function hasConcept(holder: Element, name: string): boolean {
  const concept = lookAt(holder, name);
  return concept !== undefined && peek(concept, 'coding') !== undefined;
}
