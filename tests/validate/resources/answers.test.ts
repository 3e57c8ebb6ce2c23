import { describe, expect, test } from 'vitest';
import { compileProfiles, validateBundle } from '../../../src/validate/versions/all-r4.ts';
import * as r5 from '../../../src/validate/versions/all-r5.ts';

// Forms and answers by https://hl7.org/fhir/R4/questionnaire-definitions.html and
// https://hl7.org/fhir/R5/questionnaire-definitions.html#Questionnaire.item.enableWhen. What HL7's
// validator says of such answers stands beside in kept-verdicts.test.ts.

const url = 'https://clinic.example/fhir/Questionnaire/skin';
const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };

function form(item: readonly object[], more: object = {}): object {
  return { resourceType: 'Questionnaire', id: 'q', text, url, status: 'active', item, ...more };
}

function response(item: readonly object[], more: object = {}): object {
  const head = { resourceType: 'QuestionnaireResponse', id: 'r', text, status: 'completed' };
  return { ...head, questionnaire: url, item, ...more };
}

function told({
  issues,
}: {
  issues: readonly { severity: string; code: string; path: readonly unknown[] }[];
}): string[] {
  return issues
    .filter(({ severity }) => severity === 'error')
    .map(({ code, path }) => `${code} ${path.join('.')}`);
}

const skin = { linkId: '1', text: 'Dry skin?', type: 'boolean' };
const wrong = response([{ linkId: '1', answer: [{ valueString: 'yes' }] }]);

describe('the form', () => {
  test('is taken from what the caller gives, and said to be unchecked where it is not there', () => {
    const profiles = compileProfiles([form([skin])]);
    expect(profiles.issues).toEqual([]);
    expect(told(validateBundle(wrong, { profiles }))).toEqual([
      'wrong-type item.0.answer.0.valueString',
    ]);
    const alone = validateBundle(wrong);
    expect(alone.conformance).toBe('not-fully-checked');
    expect(alone.unchecked.map(({ rule, path }) => [rule, path])).toEqual([
      [url, ['questionnaire']],
    ]);
  });

  test('in another version is not the one that was answered', () => {
    const profiles = compileProfiles([form([skin], { version: '2' })]);
    const other = { ...wrong, questionnaire: `${url}|1` };
    expect(validateBundle(other, { profiles }).conformance).toBe('not-fully-checked');
    const same = { ...wrong, questionnaire: `${url}|2` };
    expect(validateBundle(same, { profiles }).conformance).toBe('does-not-conform');
  });

  test('may be contained, and is looked at in a bundle as well', () => {
    const inside = { ...wrong, questionnaire: '#q', contained: [form([skin])] };
    const bundle = {
      resourceType: 'Bundle',
      type: 'collection',
      entry: [{ fullUrl: 'https://clinic.example/fhir/QuestionnaireResponse/r', resource: inside }],
    };
    expect(told(validateBundle(bundle))).toEqual([
      'wrong-type entry.0.resource.item.0.answer.0.valueString',
    ]);
  });
});

describe('conditions of enableWhen', () => {
  const asked = (type: string, condition: object): object =>
    form([
      { linkId: '1', text: 'x', type },
      { linkId: '2', text: 'y', type: 'string', enableWhen: [{ question: '1', ...condition }] },
    ]);
  const answered = (value: object): object =>
    response([
      { linkId: '1', answer: [value] },
      { linkId: '2', answer: [{ valueString: 'x' }] },
    ]);
  const kg = (value: number, unit = 'kg') => ({
    value,
    system: 'http://unitsofmeasure.org',
    code: unit,
  });
  test.each([
    ['boolean', { operator: 'exists', answerBoolean: true }, { valueBoolean: false }, true],
    ['boolean', { operator: 'exists', answerBoolean: false }, { valueBoolean: false }, false],
    ['integer', { operator: '>', answerInteger: 3 }, { valueInteger: 4 }, true],
    ['integer', { operator: '>', answerInteger: 3 }, { valueInteger: 3 }, false],
    ['integer', { operator: '>=', answerInteger: 3 }, { valueInteger: 3 }, true],
    ['integer', { operator: '!=', answerInteger: 3 }, { valueInteger: 3 }, false],
    ['date', { operator: '<', answerDate: '2026-03-04' }, { valueDate: '2026-03-03' }, true],
    ['date', { operator: '<', answerDate: '2026-03-04' }, { valueDate: '2026-03-04' }, false],
    // "There is not a clear answer" where the precision differs: not held against the sender.
    ['date', { operator: '>', answerDate: '1970' }, { valueDate: '1970-10-15' }, true],
    ['string', { operator: '=', answerString: 'a' }, { valueString: 'b' }, false],
    ['quantity', { operator: '<', answerQuantity: kg(3) }, { valueQuantity: kg(4) }, false],
    ['quantity', { operator: '<', answerQuantity: kg(3) }, { valueQuantity: kg(4, 'g') }, true],
  ])('%s %j, answered by %j', (type, condition, value, enabled) => {
    const profiles = compileProfiles([asked(type, condition)]);
    expect(told(validateBundle(answered(value), { profiles }))).toEqual(
      enabled ? [] : ['contradiction item.1'],
    );
  });

  test.each([
    ['any', [true, false], []],
    ['any', [false, false], ['contradiction item.2']],
    ['all', [true, false], ['contradiction item.2']],
    ['all', [true, true], []],
  ])('of several, %s of %j', (enableBehavior, values, expected) => {
    const conditions = ['1', '2'].map((question) => ({
      question,
      operator: '=',
      answerBoolean: true,
    }));
    const last = { linkId: '3', text: 'z', type: 'string', enableWhen: conditions, enableBehavior };
    const profiles = compileProfiles([form([skin, { ...skin, linkId: '2' }, last])]);
    const given = response([
      { linkId: '1', answer: [{ valueBoolean: values[0] }] },
      { linkId: '2', answer: [{ valueBoolean: values[1] }] },
      { linkId: '3', answer: [{ valueString: 'x' }] },
    ]);
    expect(told(validateBundle(given, { profiles }))).toEqual(expected);
  });
});

test('what R5 says to answer with: options alone, a text besides, or anything', () => {
  const system = 'https://clinic.example/kinds';
  const answerOption = [{ valueCoding: { system, code: 'dry' } }];
  const given = (answerConstraint: string, value: object): string[] => {
    const item = { linkId: '1', text: 'x', type: 'coding', answerOption, answerConstraint };
    const profiles = r5.compileProfiles([form([item])]);
    const answers = response([{ linkId: '1', answer: [value] }]);
    return told(r5.validateBundle(answers, { profiles }));
  };
  const other = { valueCoding: { system, code: 'oily' } };
  expect(given('optionsOnly', { valueCoding: { system, code: 'dry' } })).toEqual([]);
  expect(given('optionsOnly', other)).toEqual(['unknown-code item.0.answer.0.valueCoding']);
  expect(given('optionsOrType', other)).toEqual([]);
  expect(given('optionsOrString', { valueString: 'scaly' })).toEqual([]);
  expect(given('optionsOnly', { valueString: 'scaly' })).toEqual([
    'wrong-type item.0.answer.0.valueString',
  ]);
});

describe('the answers of a value set that the form contains', () => {
  const system = 'https://clinic.example/kinds';
  const contains = [
    { system, code: 'dry' },
    { system, code: 'scaly' },
  ];
  const item = { linkId: '1', text: 'x', type: 'choice', answerValueSet: '#kinds' };
  const judged = (code: string, expansion: object): ReturnType<typeof validateBundle> => {
    const set = { resourceType: 'ValueSet', id: 'kinds', status: 'active', expansion };
    const profiles = compileProfiles([form([item], { contained: [set] })]);
    const given = response([{ linkId: '1', answer: [{ valueCoding: { system, code } }] }]);
    return validateBundle(given, { profiles });
  };
  const timestamp = '2025-05-06T09:00:00Z';

  test('are those that can be given', () => {
    expect(judged('scaly', { timestamp, contains }).conformance).toBe('conforms');
    expect(told(judged('oily', { timestamp, contains }))).toEqual([
      'unknown-code item.0.answer.0.valueCoding',
    ]);
  });

  test.each([
    ['only begun', { timestamp, total: 3, contains }],
    ['from the middle', { timestamp, offset: 2, contains }],
    ['with groups', { timestamp, contains: [{ ...contains[0], contains }] }],
    ['empty', { timestamp }],
  ])('are not known of a list %s', (_, expansion) => {
    const { conformance, unchecked } = judged('oily', expansion);
    expect(conformance).toBe('not-fully-checked');
    expect(unchecked.map(({ why }) => why)).toEqual(['the value set #kinds is not held']);
  });
});

test('below a question that has no answer, and in a group that is not there, nothing is required', () => {
  const required = { linkId: '2', text: 'Where?', type: 'string', required: true };
  const profiles = compileProfiles([
    form([
      { ...skin, item: [required] },
      { linkId: 'g', text: 'g', type: 'group', item: [{ ...required, linkId: '3' }] },
    ]),
  ]);
  expect(told(validateBundle(response([{ linkId: '1' }]), { profiles }))).toEqual([]);
  const answered = response([{ linkId: '1', answer: [{ valueBoolean: true }] }]);
  expect(told(validateBundle(answered, { profiles }))).toEqual([
    'missing-property item.0.answer.0.item',
  ]);
});
