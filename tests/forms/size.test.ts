import type { Questionnaire } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { toQuestionnaire } from '../../src/forms/index.ts';
import { builtInCatalogue, orThrow } from '../../src/index.ts';
import { sampled } from '../sampled.ts';
import { itemsOf, offeredBy } from './fill.ts';

const protocols = [...builtInCatalogue.protocols.keys()];

function formOf(protocol: string, inlineAnswers = false): Questionnaire {
  return orThrow('make', toQuestionnaire(protocol, { inlineAnswers }));
}

describe('the size of a form', () => {
  it('stays below 1.4 MB for all regions', () => {
    expect(JSON.stringify(formOf('full')).length).toBeLessThan(1_400_000);
  });

  it.each(sampled(['jaw-pain', 'nose-and-nosebleed'], protocols))(
    'holds no list of answers twice: %s',
    (protocol) => {
      const form = formOf(protocol);
      const lists = [...itemsOf(form.item)].flatMap((item) =>
        item.answerOption === undefined ? [] : [JSON.stringify(offeredBy(form, item))],
      );
      const contained = (form.contained ?? []).map((set) =>
        JSON.stringify('expansion' in set ? set.expansion : set),
      );
      expect(contained.length).toBeGreaterThan(2);
      expect(new Set([...lists, ...contained]).size).toBe(lists.length + contained.length);
    },
  );

  it.each(sampled(['jaw-pain'], protocols))(
    'offers the same answers as with all of them in each item: %s',
    (protocol) => {
      const form = formOf(protocol);
      const inline = formOf(protocol, true);
      expect(inline.contained).toBeUndefined();
      const items = [...itemsOf(form.item)];
      expect([...itemsOf(inline.item)].map((one) => offeredBy(inline, one))).toEqual(
        items.map((one) => offeredBy(form, one)),
      );
      expect(items.some(({ answerValueSet }) => answerValueSet !== undefined)).toBe(true);
    },
  );
});
