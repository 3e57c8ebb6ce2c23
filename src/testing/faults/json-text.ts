import { type Fault, type TextFault, textFaults } from './fault.ts';
import { jsonForm, jsonText, primitive } from './rules.ts';

/** The value of a quantity. */
const number = /(?<="value":)-?\d[\d.]*/g;

/** Faults of the text itself, before there is any resource. */
export const jsonTextFaults: readonly Fault[] = textFaults('json', [
  {
    ...atOne(
      'duplicate-property',
      'one property twice, with two values',
      /"status":"final"/g,
      (found) => `${found},"status":"preliminary"`,
    ),
    rule: jsonForm,
  },
  {
    ...atOne(
      'duplicate-property-same-value',
      'one property twice, with the same value',
      /"status":"final"/g,
      (found) => `${found},${found}`,
    ),
    rule: jsonForm,
  },
  {
    ...atOne(
      'duplicate-resource-type',
      'a resource that says its type twice',
      /"resourceType":"Observation"/g,
      (found) => `${found},"resourceType":"Media"`,
    ),
    rule: jsonForm,
  },
  atOne('not-a-number', 'the word NaN as a number', number, () => 'NaN'),
  atOne('infinity', 'the word Infinity as a number', number, () => 'Infinity'),
  atOne('leading-zero', 'a number with a zero before it', number, (found) => `0${found}`),
  atOne('leading-plus', 'a number with a plus sign', number, (found) => `+${found}`),
  atOne('decimal-comma', 'a number with a decimal comma', number, () => '4,0'),
  atOne('no-digit-after-point', 'a number that ends with a point', number, () => '4.'),
  atOne('no-digit-before-point', 'a number that begins with a point', number, () => '.4'),
  atOne('hexadecimal', 'a number in base 16', number, () => '0x1F'),
  {
    ...atOne(
      'number-beyond-double',
      'a number larger than any that programs hold',
      number,
      () => '1e400',
    ),
    rule: primitive('decimal'),
    code: 'value',
    severity: 'warning',
  },
  atOne('trailing-comma-in-object', 'a comma before a closing brace', /"\}/g, () => '",}'),
  atOne('trailing-comma-in-list', 'a comma before a closing bracket', /\}\]/g, () => '},]'),
  atOne('missing-comma', 'a comma too few', /","/g, () => '" "'),
  atOne('missing-colon', 'a colon too few', /":"/g, () => '" "'),
  atOne('single-quotes', 'single quotes', /"status":"final"/g, () => "'status':'final'"),
  atOne('no-quotes', 'a property without quotes', /"status":"final"/g, () => 'status:"final"'),
  atOne('comment', 'a comment', /,"/g, () => ',/* checked */"'),
  atOne(
    'true-in-capitals',
    'a truth value with a capital',
    /:(true|false)\b/g,
    (found) => `:${found.slice(1, 2).toUpperCase()}${found.slice(2)}`,
  ),
  atOne('undefined', 'a word that JSON does not have', /:"final"/g, () => ':undefined'),
  atOne(
    'unknown-escape',
    'an escape that JSON does not have',
    /"div":"/g,
    (found) => `${found}\\x3c`,
  ),
  atOne('line-break-in-text', 'a line break in a text', /"text":"/g, (found) => `${found}\n`),
  {
    ...atOne(
      'escaped-nul',
      'an escaped NUL, which no text of FHIR has',
      /"text":"/g,
      (found) => `${found}\\u0000`,
    ),
    rule: primitive('string'),
    severity: 'warning',
    code: 'value',
  },
  {
    ...atOne(
      'half-surrogate',
      'half of a pair of surrogates',
      /"text":"/g,
      (found) => `${found}\\ud83d`,
    ),
    rule: primitive('string'),
    code: 'value',
  },
  {
    ...atOne(
      'prototype-property',
      'a property that could change a prototype',
      /\{"system":/g,
      () => '{"__proto__":{"polluted":true},"system":',
    ),
    rule: jsonForm,
  },
  {
    id: 'cut-off',
    title: 'the text ends in the middle',
    rule: jsonText,
    code: 'structure',
    plant: (text, random) =>
      text.slice(0, random.int(Math.floor(text.length / 4), text.length - 2)),
  },
  {
    id: 'two-texts',
    title: 'a second text follows the first',
    rule: jsonText,
    code: 'structure',
    plant: (text) => text + text,
  },
  {
    id: 'text-after-end',
    title: 'a bracket too many at the end',
    rule: jsonText,
    code: 'structure',
    plant: (text) => `${text}}`,
  },
]);

/** Replaces one of the places that match. */
function atOne(
  id: string,
  title: string,
  pattern: RegExp,
  change: (found: string) => string,
): TextFault {
  return {
    id,
    title: `the text has ${title}`,
    rule: jsonText,
    code: 'structure',
    plant: (text, random) => {
      const found = [...text.matchAll(pattern)];
      if (found.length === 0) return undefined;
      const { 0: match, index } = random.pick(found);
      return text.slice(0, index) + change(match) + text.slice(index + match.length);
    },
  };
}
