import type { QuestionnaireItem, ValueSet } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { itemsOf } from '../fill.ts';
import { abnormal, distance, form, lid, ptosis, read, respond, told } from './lid-form.ts';

describe('which form was filled in', () => {
  const hidden = (text: string): object => ({
    item: [{ linkId: 'protocol', answer: [{ valueString: text }] }],
  });
  const cases: readonly (readonly [what: string, more: object, told: readonly string[]])[] = [
    ['its hidden item', { questionnaire: undefined, ...hidden('droopy-lid|1.0.0') }, []],
    ['nothing', { questionnaire: undefined }, ['error missing-property protocol']],
    ['a URL without version', { questionnaire: form.url }, ['error missing-property protocol']],
    [
      'another version',
      { questionnaire: `${form.url}|0.9.0` },
      ['error unknown-protocol questionnaire'],
    ],
    ['another form', hidden('jaw-pain|1.0.0'), ['error unknown-protocol protocol']],
    ['somebody else', { subject: { reference: 'Patient/9' } }, ['error other-patient subject']],
    ['the same person, in full', { subject: { reference: 'https://a.example/Patient/417' } }, []],
    ['answers withdrawn', { status: 'entered-in-error' }, ['error withdrawn-exam status']],
    ['rules unknown', { implicitRules: 'urn:x' }, ['error not-understood implicitRules']],
  ];

  it.each(cases)('%s', (_what, more, expected) => {
    expect(told(read(respond({}, more)))).toEqual(expected);
  });

  it.each([null, 3, 'text', [], { resourceType: 'Bundle' }, { __proto__: null }])(
    'takes no %j for a response',
    (value) => expect(read(value).ok).toBe(false),
  );

  it('as a clinic changed it', () => {
    const changed = structuredClone(form);
    for (const item of itemsOf(changed.item)) {
      if (item.linkId === lid) item.initial = [{ valueCoding: { code: 'state.normal' } }];
      if (item.linkId === ptosis) item.text = 'Hanging';
      if (item.linkId === distance) item.extension = [];
    }
    const own: QuestionnaireItem = { linkId: 'shoe-size', type: 'integer' };
    const questionnaire = { ...changed, version: '1.0.0-quay', item: [...(form.item ?? []), own] };
    const answered = respond(abnormal, { questionnaire: `${form.url}|1.0.0-quay` });
    answered.item?.push({ linkId: 'shoe-size', answer: [{ valueInteger: 43 }] });
    const found = read(answered, { questionnaire });
    expect(found.ok).toBe(true);
    expect(told(found)).toEqual(['warning not-in-exam shoe-size']);
    expect(told(read(respond({}), { questionnaire: changed }))).toEqual([
      `error contradiction ${lid}`,
      `warning display-mismatch ${ptosis}`,
      `error contradiction ${distance}`,
    ]);
  });

  it('as a clinic changed the words of its answers', () => {
    const changed = structuredClone(form);
    const state = [...itemsOf(changed.item)].find(({ linkId }) => linkId === lid);
    const set = changed.contained?.find(({ id }) => `#${id}` === state?.answerValueSet);
    if (set?.resourceType !== 'ValueSet') throw new Error('the states are no list');
    const { expansion } = set as ValueSet; // Resource has no more than its type in the typings
    const [first] = expansion?.contains ?? [];
    if (first === undefined) throw new Error('no state');
    first.display = 'Fine';
    const warned = told(read(respond({}), { questionnaire: changed }));
    expect(warned).toContain(`warning display-mismatch ${lid}`);
    expect(warned).not.toContain(`warning display-mismatch ${ptosis}`);
  });
});
