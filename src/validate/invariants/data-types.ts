import { decimalText } from '../../fhir/json/decimal.ts';
import { UCUM } from '../../fhir/names/systems.ts';
import { fhirVersions } from '../../fhir/version.ts';
import { has, hasChoice, hasPart, type JsonObject, textOf } from '../walk/json.ts';
import { type Invariant, rules } from './invariant.ts';

/** Invariants of data types, other than those that compare figures or dates. */
export const dataTypeInvariants: readonly Invariant[] = [
  ...rules(fhirVersions, [
    ['qty-3', 'a unit code without its system', (it) => !has(it, 'code') || has(it, 'system')],
    ['sqty-1', 'a comparator where a plain quantity must stand', (it) => !has(it, 'comparator')],
    [
      'age-1',
      'an age must have a UCUM code and be above zero',
      (it) => codedInUcum(it) && (typeof it['value'] !== 'number' || it['value'] > 0),
    ],
    ['dis-1', 'a distance must have a UCUM code', codedInUcum],
    [
      'cnt-3',
      'a count must be a whole number with the UCUM code 1',
      (it) => codedInUcum(it) && (!has(it, 'code') || it['code'] === '1') && isWhole(it),
    ],
    [
      'att-1',
      'data without the content type that tells how to read it',
      (it) => !has(it, 'data') || has(it, 'contentType'),
    ],
    [
      'cpt-2',
      'a value without the system that tells what it is',
      (it) => !has(it, 'value') || has(it, 'system'),
    ],
    [
      'exp-1',
      'an expression needs its text or a reference',
      (it) => has(it, 'expression') || has(it, 'reference'),
    ],
    ['drq-1', 'exactly one of path and searchParam must stand', pathOrParameter],
    ['drq-2', 'exactly one of path and searchParam must stand', pathOrParameter],
    [
      'trd-1',
      'data and timing cannot both stand',
      (it) => !has(it, 'data') || !hasChoice(it, 'timing'),
    ],
    ['trd-2', 'a condition without data', (it) => !has(it, 'condition') || has(it, 'data')],
    ['trd-3', 'what this type of trigger needs is missing', hasWhatTriggerNeeds],
  ]),
  ...rules(
    ['R4', 'R5'],
    [
      [
        'drt-1',
        'a duration with a code must have the system of UCUM and a value',
        (it) => !has(it, 'code') || (it['system'] === UCUM && has(it, 'value')),
      ],
    ],
  ),
  ...rules(
    ['R4B'],
    [
      [
        'drt-1',
        'a duration must have a UCUM code',
        (it) => !has(it, 'value') || (it['system'] === UCUM && has(it, 'code')),
      ],
    ],
  ),
  ...rules(fhirVersions, [
    [
      'rat-1',
      'numerator and denominator must both stand, or an extension in their place',
      (it) =>
        hasPart(it, 'numerator') === hasPart(it, 'denominator') &&
        (hasPart(it, 'numerator') || hasPart(it, 'extension')),
    ],
  ]),
  ...rules(
    ['R4B'],
    [['inv-1', 'a ratio of ranges needs a numerator and a denominator', ratioRange]],
  ),
  ...rules(
    ['R5'],
    [
      ['ratrng-1', 'a ratio of ranges needs a numerator and a denominator', ratioRange],
      [
        'ref-2',
        'a reference needs a reference, an identifier or a display',
        (it) =>
          has(it, 'reference') ||
          hasPart(it, 'identifier') ||
          has(it, 'display') ||
          hasPart(it, 'extension'),
      ],
      [
        'exp-2',
        'a name of an expression must begin with a letter',
        // Not anchored: FHIRPath looks for the pattern anywhere.
        (it) => typeof it['name'] !== 'string' || /[A-Za-z][A-Za-z0-9_]{0,63}/.test(it['name']),
      ],
      [
        'sdd-1',
        'exactly one of interval and offsets must stand',
        (it) => has(it, 'interval') !== has(it, 'offsets'),
      ],
      [
        'dos-1',
        'a reason for a dose as needed, of a dose that is not as needed',
        (it) => !has(it, 'asNeededFor') || !has(it, 'asNeeded') || it['asNeeded'] === true,
      ],
      [
        'av-1',
        'hours of a time that is all day',
        (it) =>
          it['allDay'] !== true || (!has(it, 'availableStartTime') && !has(it, 'availableEndTime')),
      ],
    ],
  ),
  ...rules(
    ['R5'],
    [
      ['cod-1', 'a display without a code', (it) => has(it, 'code') || !has(it, 'display')],
      ['ident-1', 'an identifier without a value', (it) => has(it, 'value')],
    ],
    'warning',
  ),
];

function codedInUcum(it: JsonObject): boolean {
  return (has(it, 'code') || !has(it, 'value')) && (!has(it, 'system') || it['system'] === UCUM);
}

function isWhole(it: JsonObject): boolean {
  return typeof it['value'] !== 'number' || !decimalText(it, 'value')?.includes('.');
}

function pathOrParameter(it: JsonObject): boolean {
  return has(it, 'path') !== has(it, 'searchParam');
}

function hasWhatTriggerNeeds(it: JsonObject): boolean {
  const type = textOf(it['type']);
  if (type === 'named-event') return has(it, 'name');
  if (type === 'periodic') return hasChoice(it, 'timing');
  return !type?.startsWith('data-') || has(it, 'data');
}

function ratioRange(it: JsonObject): boolean {
  const numerator = hasPart(it, 'lowNumerator') || hasPart(it, 'highNumerator');
  const denominator = hasPart(it, 'denominator');
  return (numerator && denominator) || (!numerator && !denominator && hasPart(it, 'extension'));
}
