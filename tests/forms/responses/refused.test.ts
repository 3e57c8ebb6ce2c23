import { describe, expect, it } from 'vitest';
import { finishExam, orThrow, present } from '../../../src/index.ts';
import { head } from '../fill.ts';
import { abnormal, coded, distance, lid, ptosis, read, respond, told } from './lid-form.ts';

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
