import type {
  Questionnaire,
  QuestionnaireItem,
  QuestionnaireResponse,
  QuestionnaireResponseItem,
} from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  fromQuestionnaireResponse,
  type ResponseOptions,
  startingResponse,
  toQuestionnaire,
} from '../../src/forms/index.ts';
import {
  type ExamDraft,
  finishExam,
  finishExamOrThrow,
  fromJson,
  measured,
  normal,
  type Outcome,
  orThrow,
  present,
  startExam,
  toBundleOrThrow,
} from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { fillAtRandom, head, itemsOf } from './fill.ts';
import { differencesOf } from './stands.ts';

const protocol = 'droopy-lid';
const form: Questionnaire = orThrow('make', toQuestionnaire(protocol));

/** Answers by linkId, put where the form has their items. */
function respond(
  answers: Readonly<Record<string, object>>,
  more: object = {},
): QuestionnaireResponse {
  const place = (items: readonly QuestionnaireItem[] = []): QuestionnaireResponseItem[] =>
    items.flatMap(({ linkId, item }): QuestionnaireResponseItem[] => {
      const inner = place(item);
      const given = answers[linkId];
      if (given !== undefined) return [{ linkId, answer: [given].flat() }];
      return inner.length === 0 ? [] : [{ linkId, item: inner }];
    });
  return {
    resourceType: 'QuestionnaireResponse',
    status: 'completed',
    questionnaire: `${form.url}|${form.version}`,
    item: place(form.item),
    ...more,
  };
}

const coded = (code: string): object => ({
  valueCoding: { code, display: 'as a renderer has it' },
});

const lid = 'region-state/lid-upper/left';
const ptosis = 'finding/lid-position.ptosis/lid-upper/left';
const distance = 'measurement/mrd1/lid-upper/left';
const abnormal = { [lid]: coded('state.abnormal'), [`${lid}:methods`]: coded('inspection') };

function read(response: unknown, more: Partial<ResponseOptions> = {}): Outcome<ExamDraft> {
  return fromQuestionnaireResponse(response, { protocol, exam: head, ...more });
}

/** Code and linkId of what was said, but for questions that are merely open. */
function told({ issues }: Outcome<unknown>): unknown[] {
  return issues
    .filter(({ code, severity }) => code !== 'missing-property' || severity === 'error')
    .map(({ severity, code, path }) => `${severity} ${code} ${path.join(' ')}`);
}

describe('answers', () => {
  it('become the exam that they say, and its bundle conforms', () => {
    for (let seed = 1; seed <= 5; seed++) {
      const { response, given } = fillAtRandom(form, createRandom(seed));
      const draft = orThrow('read', read(response, { unanswered: 'refuse' }));
      expect(differencesOf(draft.exam, given)).toEqual([]);
      const { statements } = draft.exam;
      const lost = { ...draft.exam, statements: statements.slice(1) };
      expect(differencesOf(lost, given).length).toBeGreaterThan(0);
      const bundle = toBundleOrThrow(finishExamOrThrow(draft, 'final'));
      expect(validateBundle(bundle).valid).toBe(true);
    }
  });

  it('keep the precision that they were read with', () => {
    const text = JSON.stringify(respond({ [distance]: { valueDecimal: 2 } })).replace(
      '"valueDecimal":2',
      '"valueDecimal":2.50',
    );
    const { value } = read(fromJson(text).value);
    expect(value?.exam.statements).toEqual([
      expect.objectContaining({ kind: 'measurement', value: '2.50', unit: 'mm' }),
    ]);
  });

  it('leave unsaid what was not answered', () => {
    const outcome = read(respond({}));
    expect(outcome.value?.exam.statements).toEqual([]);
    expect(outcome.value?.exam.conclusion).toBeUndefined();
    expect(outcome.issues.every(({ code }) => code === 'missing-property')).toBe(true);
    expect(told(read(respond({}), { unanswered: 'refuse' }))).toContain(
      `error missing-property ${lid}`,
    );
  });

  it('are read whatever a renderer writes beside them', () => {
    const plain = read(respond(abnormal));
    const written = respond(
      {
        ...abnormal,
        [`${lid}:methods`]: {
          ...coded('inspection'),
          valueCoding: {
            code: 'inspection',
            system: 'https://face-neck-fhir.example/fhir/CodeSystem/methods',
            _display: { extension: [{ url: 'https://renderer.example/x', valueString: 'y' }] },
          },
        },
      },
      { meta: { source: 'https://renderer.example' }, status: 'in-progress' },
    );
    expect(read(written).value?.exam).toEqual(plain.value?.exam);
  });

  it('suspect a disease, and do not state it', () => {
    const further = `${lid}:further`;
    const response = respond({ ...abnormal });
    const find = (items: QuestionnaireResponseItem[] = []): QuestionnaireResponseItem | undefined =>
      items.find(({ item }) => item?.some(({ linkId }) => linkId === lid)) ??
      items.map(({ item }) => find(item)).find((one) => one !== undefined);
    const sign = (code: string, presence: string): QuestionnaireResponseItem => ({
      linkId: further,
      item: [
        { linkId: `${further}:sign`, answer: [coded(code)] },
        { linkId: `${further}:presence`, answer: [coded(presence)] },
      ],
    });
    find(response.item)?.item?.push(
      sign('melanoma', 'presence.suspected'),
      { linkId: further },
      sign('chalazion', 'presence.absent'),
      { linkId: further, item: sign('', 'presence.present').item?.slice(1) ?? [] },
      { linkId: further, item: sign('scar', '').item?.slice(0, 1) ?? [] },
    );
    // A presence of no sign, and a sign without its presence.
    expect(told(read(response))).toEqual([
      `warning not-in-exam ${further} 3 ${further}:presence`,
      `error missing-property ${further} 4 ${further}:presence`,
    ]);
    find(response.item)?.item?.splice(-2);
    const { value, issues } = read(response);
    const signs = value?.exam.statements.filter(({ kind }) => kind === 'finding');
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(signs).toEqual([
      expect.objectContaining({ finding: 'melanoma', presence: 'present', certainty: 'suspected' }),
      expect.objectContaining({ finding: 'chalazion', presence: 'absent' }),
    ]);
  });
});

describe('what cannot be taken is told at its item', () => {
  const cases: readonly (readonly [
    what: string,
    answers: Readonly<Record<string, object>>,
    told: readonly string[],
  ])[] = [
    [
      'normal and not examined',
      { [lid]: [coded('state.normal'), coded('state.not-examined')] },
      [`error too-many ${lid}`],
    ],
    [
      'not examined without a reason',
      { [lid]: coded('state.not-examined') },
      [`error missing-property ${lid}:reason`],
    ],
    [
      'normal without saying how',
      { [lid]: coded('state.normal') },
      [`error missing-property ${lid}:methods`],
    ],
    [
      'a sign of a lid that was not examined',
      {
        [lid]: coded('state.not-examined'),
        [`${lid}:reason`]: coded('declined'),
        [ptosis]: coded('presence.present'),
      },
      [`warning not-in-exam ${ptosis}`],
    ],
    ['a code of nobody', { [lid]: coded('state.fine') }, [`error unknown-code ${lid}`]],
    [
      'a code of another system',
      { [lid]: { valueCoding: { system: 'https://other.example', code: 'state.normal' } } },
      [`error unknown-code ${lid}`],
    ],
    ['words for a code', { [lid]: { valueString: 'normal' } }, [`error wrong-type ${lid}`]],
    [
      'a figure that no face has',
      { [distance]: { valueDecimal: 25 } },
      [`error implausible-figure ${distance}`],
    ],
    [
      'a figure whose comma was lost',
      { [distance]: { valueDecimal: 12 } },
      [`warning implausible-figure ${distance}`],
    ],
    [
      'a bound',
      { [distance]: { valueQuantity: { value: 2, comparator: '<', code: 'mm' } } },
      [`error invalid-value ${distance}`],
    ],
    [
      'another unit',
      { [distance]: { valueQuantity: { value: 2, code: 'cm' } } },
      [`error wrong-unit ${distance}`],
    ],
    ['a figure as text', { [distance]: { valueDecimal: '2,5' } }, [`error wrong-type ${distance}`]],
    [
      'a conclusion without a level of concern',
      { 'conclusion:text': { valueString: 'All well' } },
      ['error missing-property conclusion:concern'],
    ],
    [
      'a conclusion of blanks',
      { 'conclusion:text': { valueString: ' ' }, 'conclusion:concern': coded('concern.none') },
      ['error missing-property conclusion:text'],
    ],
    [
      'an item within an answer',
      { [lid]: { ...coded('state.normal'), item: [{ linkId: 'x' }] } },
      [
        `error unknown-property ${lid} [unknown property 1]`,
        `error missing-property ${lid}:methods`,
      ],
    ],
    [
      'a modifier',
      { [lid]: { ...coded('state.normal'), modifierExtension: [] } },
      [`error not-understood ${lid}`, `error missing-property ${lid}:methods`],
    ],
  ];

  it.each(cases)('%s', (_what, answers, expected) => {
    expect(told(read(respond({ ...answers })))).toEqual(expected);
  });

  it('takes a figure with the very unit that was asked for', () => {
    const quantity = { value: 2.5, system: 'http://unitsofmeasure.org', code: 'mm' };
    const { value } = read(respond({ [distance]: { valueQuantity: quantity } }));
    expect(value?.exam.statements).toEqual([expect.objectContaining({ value: '2.5', unit: 'mm' })]);
  });

  it('items that the form does not have, or has elsewhere, or once', () => {
    const known = respond(abnormal);
    const item = known.item ?? [];
    const stray = { linkId: 'My secret', answer: [{ valueString: 'Told in confidence' }] };
    const moved = { linkId: lid, answer: [coded('state.normal')] };
    const found = read({ ...known, item: [...item, stray, moved, ...item] });
    expect(told(found)).toEqual([
      `error unknown-property [unknown property ${item.length + 1}]`,
      `error unknown-property [unknown property ${item.length + 2}]`,
      'error duplicate-key region/lid-upper',
    ]);
    expect(JSON.stringify(found)).not.toContain('secret');
    expect(JSON.stringify(found)).not.toContain('confidence');
  });

  it('opposites between answers, at one of them', () => {
    const other = 'finding/lid-position.ptosis/lid-upper/left';
    const response = respond({ ...abnormal, [other]: coded('presence.absent') });
    const twice = finishExam(
      present(orThrow('read', read(response)), 'lid-position.ptosis', {
        region: 'lid-upper',
        side: 'left',
      }),
      'draft',
    );
    expect(twice.issues.map(({ code }) => code)).toContain('contradiction');
  });

  it('faults of the head, as of the exam', () => {
    const exam = { ...head, examiners: [{ key: 'a' }, { key: 'a' }] } as const;
    expect(told(read(respond(abnormal), { exam }))).toEqual([
      'error duplicate-key exam examiners 1 key',
    ]);
  });
});

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
});

describe('what was said last time', () => {
  it('is shown beside the questions, and taken as said by nobody', () => {
    const place = { region: 'lid-upper', side: 'left', methods: ['measurement'] } as const;
    let draft = startExam({
      ...head,
      id: 'quay-2024',
      protocol: { id: protocol, version: '1.0.0' },
    });
    draft = normal(draft, [{ region: 'lid-upper', side: 'both', methods: ['inspection'] }]);
    draft = measured(draft, 'mrd1', place, '4.0', 'mm');
    const options = { lastTime: true, prior: finishExamOrThrow(draft, 'final') };
    const start = orThrow('begin', startingResponse(protocol, options));
    const shown = JSON.stringify(start);
    expect(shown).toContain(
      '{"linkId":"last:measurement/mrd1/lid-upper/left","answer":[{"valueString":"4.0 mm (2025-05-06)"}]}',
    );
    expect(shown).toContain('Examined, no abnormality found (2025-05-06)');
    const outcome = read(start, { lastTime: true });
    expect(outcome.value?.exam.statements).toEqual([]);
    expect(told(outcome)).toEqual([]);
  });
});
