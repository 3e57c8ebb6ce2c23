import { decimalText } from '../../fhir/json/decimal.ts';
import {
  type Element,
  flagOf,
  innerOf,
  innersOf,
  lookAtList,
  textOf,
  wholeOf,
} from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { isAffirmed } from './answers.ts';

/** The words of a concept: its text, or the display or code of its first coding. */
export function conceptWords(holder: Element, name: string): string | undefined {
  const concept = innerOf(holder, name);
  return concept && wordsOfConcept(concept);
}

function wordsOfConcept(concept: Element): string | undefined {
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

/** Everything that an observation or component says in words: code, site, value, and what was made of it. */
export function holderWords(
  holder: Element,
  {
    withSite,
    title,
    entry,
  }: {
    readonly withSite: boolean;
    /** Name of the resource that a component is of. */
    readonly title: Element | undefined;
    readonly entry: Entry;
  },
): string {
  const code = conceptWords(holder, 'code');
  const named = [title && wordsOfConcept(title), code].filter(isSaid).join(', ');
  const sites = withSite ? siteWords(entry.resource) : [];
  const head = [named, sites.length === 0 ? undefined : `(${sites.join('; ')})`]
    .filter(isSaid)
    .join(' ');
  const value = valueWords(holder) ?? conceptWords(holder, 'dataAbsentReason');
  const judged = isAffirmed(holder)
    ? []
    : innersOf(holder, 'interpretation').flatMap((one) => wordsOfConcept(one) ?? []);
  const states = ['clinicalStatus', 'verificationStatus'].flatMap(
    (name) => conceptWords(holder, name) ?? [],
  );
  const said = [head, value].filter(isSaid).join(': ');
  return said === '' ? said : [said, ...judged, ...states].join('; ');
}

function siteWords(resource: Element): string[] {
  const single = conceptWords(resource, 'bodySite');
  if (single !== undefined) return [single];
  if (lookAtList(resource, 'bodySite').length === 0) return [];
  return innersOf(resource, 'bodySite').flatMap((site) => wordsOfConcept(site) ?? []);
}

function isSaid(part: string | undefined): part is string {
  return part !== undefined && part !== '';
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
