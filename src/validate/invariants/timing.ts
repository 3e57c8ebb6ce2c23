import { fhirVersions } from '../../fhir/version.ts';
import { has, type JsonObject, listOf } from '../walk/json.ts';
import { type Invariant, rules } from './invariant.ts';

/** Invariants of Timing.repeat. */
export const timingInvariants: readonly Invariant[] = rules(fhirVersions, [
  ['tim-1', 'a duration without its unit', (it) => !has(it, 'duration') || has(it, 'durationUnit')],
  ['tim-2', 'a period without its unit', (it) => !has(it, 'period') || has(it, 'periodUnit')],
  ['tim-4', 'a duration below zero', (it) => notNegative(it, 'duration')],
  ['tim-5', 'a period below zero', (it) => notNegative(it, 'period')],
  ['tim-6', 'periodMax without period', (it) => !has(it, 'periodMax') || has(it, 'period')],
  ['tim-7', 'durationMax without duration', (it) => !has(it, 'durationMax') || has(it, 'duration')],
  ['tim-8', 'countMax without count', (it) => !has(it, 'countMax') || has(it, 'count')],
  ['tim-9', 'an offset from an event that is none, or a meal itself', offsetFitsEvent],
  [
    'tim-10',
    'times of day and events cannot both stand',
    (it) => !has(it, 'timeOfDay') || !has(it, 'when'),
  ],
]);

function notNegative(it: JsonObject, name: string): boolean {
  const value = it[name];
  return has(it, name) ? typeof value === 'number' && value >= 0 : true;
}

/** @see https://hl7.org/fhir/R4/valueset-event-timing.html: meals, without before or after. */
const meals: ReadonlySet<unknown> = new Set(['C', 'CM', 'CD', 'CV']);

function offsetFitsEvent(it: JsonObject): boolean {
  if (!has(it, 'offset')) return true;
  return has(it, 'when') && !listOf(it['when']).some((event) => meals.has(event));
}
