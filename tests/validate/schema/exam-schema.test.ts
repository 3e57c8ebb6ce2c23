import { describe, expect, test } from 'vitest';
import type { Issue } from '../../../src/issues/issue.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { examSchemaIssues } from '../../../src/model/schema-issues.ts';
import { type Told, withoutFacts } from '../../issues/without-facts.ts';
import { changed } from '../example.ts';

/** Yearly health check of a harbour worker; everyone in it is invented. */
const exam: Exam = {
  format: 'face-neck-exam/1',
  id: 'harbour-2024-017',
  status: 'final',
  subject: { name: { family: 'Quay', given: ['Orla'] }, birthDate: '1979-05', gender: 'female' },
  examiners: [{ key: 'examiner', name: { text: 'Dr Moor' } }],
  performed: { start: '2024-03-01T09:30:00+01:00' },
  recorded: '2024-03-01T10:00:00+01:00',
  protocol: { id: 'yearly', version: '1' },
  statements: [
    {
      key: 's1',
      kind: 'region-state',
      state: 'normal',
      region: 'cheek',
      side: 'right',
      methods: ['inspection'],
    },
    {
      key: 's2',
      kind: 'region-state',
      state: 'not-examined',
      region: 'ear-canal',
      side: 'left',
      reason: { code: 'declined' },
    },
    {
      key: 's3',
      kind: 'finding',
      finding: 'lump',
      presence: 'present',
      region: 'neck',
      side: 'left',
      attributes: [
        { attribute: 'size', value: { value: '4.0', unit: 'mm' } },
        { attribute: 'count', value: 1 },
        { attribute: 'mobile', value: true },
        { attribute: 'surface', value: 'smooth' },
      ],
    },
    {
      key: 's4',
      kind: 'sensation',
      point: 'v2',
      side: 'right',
      results: [{ modality: 'light-touch', result: 'felt' }],
    },
    {
      key: 's5',
      kind: 'measurement',
      measure: 'mouth-opening',
      region: 'mouth',
      value: '42',
      unit: 'mm',
    },
    { key: 's6', kind: 'note', text: 'Worked on deck all summer.' },
  ],
};

test('a sound exam has no issue', () => {
  expect(examSchemaIssues(exam)).toEqual([]);
});

function error(code: Issue['code'], path: Issue['path'], message: string, expected?: string): Told {
  return { code, severity: 'error', message, path, ...(expected !== undefined && { expected }) };
}

const form = 'the value does not have the required form';
const decimal = 'a decimal as text, such as 4.0';
const key = 'a key of letters, digits and . _ ~ : / - that begins with a letter or digit';
const code = 'a code of lowercase letters, digits, dots and hyphens';
const states = 'normal, abnormal, partial, not-examined or not-applicable';
const kinds =
  'finding, region-state, sensation, sensation-comparison, movement, function-test, measurement, scale-score, symptom, note or image';

const faults: readonly (readonly [
  fault: string,
  path: readonly (string | number)[],
  value: unknown,
  ...issues: Told[],
])[] = [
  [
    'another format',
    ['format'],
    'face-neck-exam/2',
    error('invalid-value', ['format'], form, 'face-neck-exam/1'),
  ],
  [
    'a missing property',
    ['recorded'],
    undefined,
    error(
      'missing-property',
      ['recorded'],
      'the required property is missing',
      'a time with zone such as 2024-03-01T09:30:00+01:00',
    ),
  ],
  [
    'a missing list of codes',
    ['status'],
    undefined,
    error(
      'missing-property',
      ['status'],
      'the required property is missing',
      'draft, preliminary, final, amended, corrected, appended, cancelled or entered-in-error',
    ),
  ],
  [
    'a misspelt property',
    ['statments'],
    [],
    error('unknown-property', ['statments'], 'this is not a property of Exam', 'statements'),
  ],
  [
    'a decimal as a number',
    ['statements', 4, 'value'],
    42,
    error('wrong-type', ['statements', 4, 'value'], 'the value is a whole number', decimal),
  ],
  [
    'a decimal with a comma',
    ['statements', 4, 'value'],
    '4,0',
    error('invalid-value', ['statements', 4, 'value'], form, decimal),
  ],
  [
    'a day without its zero',
    ['subject', 'birthDate'],
    '1979-5',
    error(
      'invalid-value',
      ['subject', 'birthDate'],
      form,
      'a date such as 1962, 1962-03 or 1962-03-20',
    ),
  ],
  ['an empty key', ['id'], '', error('empty-value', ['id'], 'the text is empty')],
  ['a key with a space', ['id'], 'a b', error('invalid-value', ['id'], form, key)],
  [
    'a key that is too long',
    ['id'],
    'a'.repeat(201),
    error('too-large', ['id'], 'the text is too long', 'at most 200 characters'),
  ],
  [
    'a blank text',
    ['statements', 5, 'text'],
    ' \n',
    error('invalid-value', ['statements', 5, 'text'], form, 'text that is not blank'),
  ],
  ['no examiner', ['examiners'], [], error('empty-value', ['examiners'], 'the list is empty')],
  [
    'an unknown kind',
    ['statements', 0, 'kind'],
    'region',
    error('unknown-code', ['statements', 0, 'kind'], 'the value does not name a known kind', kinds),
  ],
  [
    'no kind',
    ['statements', 0, 'kind'],
    undefined,
    error('missing-property', ['statements', 0, 'kind'], 'the required property is missing', kinds),
  ],
  [
    'a kind that is no text',
    ['statements', 0, 'kind'],
    null,
    error('wrong-type', ['statements', 0, 'kind'], 'the value is null', kinds),
  ],
  [
    'an unknown state',
    ['statements', 0, 'state'],
    'fine',
    error(
      'unknown-code',
      ['statements', 0, 'state'],
      'the value does not name a known kind',
      states,
    ),
  ],
  [
    'no state',
    ['statements', 0, 'state'],
    undefined,
    error(
      'missing-property',
      ['statements', 0, 'state'],
      'the required property is missing',
      states,
    ),
  ],
  [
    'a state without what it needs',
    ['statements', 1, 'reason'],
    undefined,
    error(
      'missing-property',
      ['statements', 1, 'reason'],
      'the required property is missing',
      'a Reason',
    ),
  ],
  [
    'a property of another state',
    ['statements', 0, 'reason'],
    { code: 'declined' },
    error(
      'unknown-property',
      ['statements', 0, 'reason'],
      'this is not a property of Normal',
      'region',
    ),
  ],
  [
    'an unknown side',
    ['statements', 0, 'side'],
    'rigth',
    error(
      'unknown-code',
      ['statements', 0, 'side'],
      'the value is not one of the permitted codes',
      'right, left, both, midline, right-of-midline or left-of-midline',
    ),
  ],
  [
    'a code of the wrong form',
    ['statements', 0, 'region'],
    'Cheek',
    error('invalid-value', ['statements', 0, 'region'], form, code),
  ],
  [
    'a value of no type of the union',
    ['statements', 2, 'attributes', 0, 'value'],
    null,
    error(
      'wrong-type',
      ['statements', 2, 'attributes', 0, 'value'],
      'the value is null',
      'text, true or false, a number or an object',
    ),
  ],
  [
    'a fault in one member of a union',
    ['statements', 2, 'attributes', 0, 'value'],
    { value: '4.0' },
    error(
      'missing-property',
      ['statements', 2, 'attributes', 0, 'value', 'unit'],
      'the required property is missing',
      'a UCUM unit code such as mm',
    ),
  ],
  [
    'a count that is no whole number',
    ['statements', 2, 'attributes', 1, 'value'],
    1.5,
    error(
      'wrong-type',
      ['statements', 2, 'attributes', 1, 'value'],
      'the value is a number',
      'a whole number from 0 to 100000',
    ),
  ],
  [
    'a count below zero',
    ['statements', 2, 'attributes', 1, 'value'],
    -1,
    error(
      'invalid-value',
      ['statements', 2, 'attributes', 1, 'value'],
      form,
      'a whole number from 0 to 100000',
    ),
  ],
  [
    'a statement that is none',
    ['statements', 0],
    'normal',
    error('wrong-type', ['statements', 0], 'the value is text', 'a Statement'),
  ],
  [
    'half a surrogate pair',
    ['statements', 5, 'text'],
    'a\uD83D',
    error(
      'invalid-unicode',
      ['statements', 5, 'text'],
      'the text holds half a surrogate pair, U+D83D',
      'Unicode text whose only control characters are tab, line feed and carriage return',
    ),
  ],
];

describe('one fault gives one issue, at the property', () => {
  for (const [fault, path, value, ...issues] of faults) {
    test(fault, () => {
      expect(withoutFacts(examSchemaIssues(changed(exam, path, value)))).toEqual(issues);
    });
  }
});

test('no value stands in an issue unless asked for', () => {
  const wrong = changed(exam, ['subject', 'birthDate'], 'in spring');
  expect(JSON.stringify(examSchemaIssues(wrong))).not.toContain('spring');
  expect(examSchemaIssues(wrong, { includeValues: true })[0]?.received).toBe('in spring');
});
