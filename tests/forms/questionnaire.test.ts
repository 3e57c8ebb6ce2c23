import type { Questionnaire, QuestionnaireItem } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  type FormItem,
  type QuestionnaireOptions,
  toFormDescription,
  toQuestionnaire,
} from '../../src/forms/index.ts';
import { createCatalogue, orThrow } from '../../src/index.ts';
import { validateBundle } from '../../src/validate/versions/all-r4.ts';
import { validateBundle as validateR5 } from '../../src/validate/versions/all-r5.ts';
import { itemsOf, offeredBy } from './fill.ts';

function formOf(protocol: string, options: QuestionnaireOptions = {}): Questionnaire {
  return orThrow('make', toQuestionnaire(protocol, { ...options, fhirVersion: 'R4' }));
}

function itemOf(form: Questionnaire, linkId: string): QuestionnaireItem | undefined {
  return [...itemsOf(form.item)].find((one) => one.linkId === linkId);
}

const lids = formOf('droopy-lid');

describe('the form of a protocol', () => {
  it('is a valid Questionnaire of each version, in both languages', () => {
    for (const language of ['en', 'de'] as const) {
      const r4 = validateBundle(formOf('jaw-pain', { language, lastTime: true }));
      const r5 = validateR5(toQuestionnaire('jaw-pain', { fhirVersion: 'R5', language }).value);
      expect([r4.conformance, r4.issues, r5.conformance, r5.issues]).toEqual([
        'conforms',
        [],
        'conforms',
        [],
      ]);
    }
  });

  it('asks for everything that coverage asks for, on each side', () => {
    const keys = [...itemsOf(lids.item)].map(({ linkId }) => linkId);
    expect(keys).toEqual([...new Set(keys)]);
    expect(keys).toEqual(
      expect.arrayContaining([
        'region-state/lid-upper/right',
        'region-state/general',
        'finding/lid-position.ptosis/lid-upper/left',
        'measurement/mrd1/lid-upper/right',
        'measurement/pfh/eyes/left',
        'movement/frontalis/left',
        'note/lid-upper',
        'conclusion:concern',
      ]),
    );
    const sensation = [...itemsOf(formOf('jaw-pain').item)].map(({ linkId }) => linkId);
    expect(sensation).toContain('sensation/v3/left:pinprick');
  });

  it('chooses nothing beforehand, and names nothing normal by default', () => {
    for (const protocol of ['jaw-pain', 'goitre', 'lesion-follow-up']) {
      const form = orThrow('describe', toFormDescription(protocol));
      const set = everyItem(form.items).filter(({ value }) => value !== undefined);
      expect(set.map(({ linkId }) => linkId)).toEqual(['protocol']);
    }
    const chosen = [...itemsOf(lids.item)].filter(
      ({ initial, answerOption = [] }) =>
        initial !== undefined || answerOption.some(({ initialSelected }) => initialSelected),
    );
    expect(chosen.map(({ initial }) => initial)).toEqual([[{ valueString: 'droopy-lid|1.0.0' }]]);
  });

  it('needs the state of each region, how it was examined, or why not', () => {
    const key = 'region-state/lid-upper/right';
    expect(itemOf(lids, key)).toMatchObject({ type: 'choice', required: true });
    expect(itemOf(lids, `${key}:methods`)).toMatchObject({ required: true, repeats: true });
    const reason = itemOf(lids, `${key}:reason`);
    expect(reason).toMatchObject({ required: true, enableBehavior: 'any' });
    expect(reason?.enableWhen?.map(({ answerCoding }) => answerCoding?.code)).toEqual([
      'state.not-examined',
      'state.not-applicable',
    ]);
  });

  it('gives a figure its one unit, and the limits that a face can have', () => {
    const base = 'http://hl7.org/fhir/StructureDefinition';
    expect(itemOf(lids, 'measurement/mrd1/lid-upper/left')?.extension).toEqual([
      {
        url: `${base}/questionnaire-unit`,
        valueCoding: { system: 'http://unitsofmeasure.org', code: 'mm', display: 'mm' },
      },
      { url: `${base}/minValue`, valueDecimal: -12 },
      { url: `${base}/maxValue`, valueDecimal: 15 },
    ]);
  });

  it('speaks German throughout, with the same codes', () => {
    const german = formOf('droopy-lid', { language: 'de' });
    expect([german.title, german.language]).toEqual(['Hängendes Lid', 'de']);
    const state = itemOf(german, 'region-state/lid-upper/left');
    expect(state?.text).toBe('Oberlid, links');
    const shape = (form: Questionnaire): unknown =>
      [...itemsOf(form.item)].map((item) => [
        item.linkId,
        item.type,
        offeredBy(form, item).map(({ code }) => code),
      ]);
    expect(shape(german)).toEqual(shape(lids));
    expect(german.url).not.toBe(lids.url);
  });

  it('has coded questions and pages in R5, by the names that it has for them', () => {
    const form = orThrow('make', toQuestionnaire('jaw-pain', { fhirVersion: 'R5' }));
    const types = new Set(form.item?.map(({ type }) => type));
    expect([...types]).toEqual(['string', 'group']);
    expect(JSON.stringify(form)).toContain('"type":"coding"');
    expect(JSON.stringify(form)).not.toContain('"type":"choice"');
    expect(form.item?.[1]?.extension?.[0]?.valueCodeableConcept?.coding?.[0]?.code).toBe('page');
  });

  it('is made for a protocol and signs of a clinic too', () => {
    const catalogue = orThrow(
      'add',
      createCatalogue({
        system: 'https://harbour.example/codes',
        findings: [{ code: 'salt-crust', display: 'Salt crust', regions: ['temple'] }],
        protocols: [
          {
            code: 'quay-check',
            display: 'Quay check',
            version: '2',
            regions: [{ region: 'temple', methods: ['inspection'] }],
            measures: ['hb', 'whisper', 'lesion-max'],
          },
        ],
      }),
    );
    const signs = { temple: ['salt-crust'] };
    const form = orThrow('make', toQuestionnaire('quay-check', { catalogue, signs }));
    const keys = [...itemsOf(form.item)].map(({ linkId }) => linkId);
    expect(keys).toContain('finding/salt-crust/temple/left');
    expect(keys).toContain('scale-score/hb/right');
    expect(keys).toContain('measurement/lesion-max:place');
    expect(form.url).toMatch(/Questionnaire\/quay-check$/);
    expect(itemOf(form, 'measurement/whisper/hearing/left')?.type).toBe('integer');
  });

  it.each([
    ['droopy-lids', {}, 'protocol', 'unknown-code'],
    ['droopy-lid', { language: 'fr' }, 'language', 'unknown-code'],
    ['droopy-lid', { fhirVersion: 'R3' }, 'fhirVersion', 'unknown-code'],
    ['droopy-lid', { signs: { temple: ['nothing'] } }, 'signs', 'unknown-code'],
    ['droopy-lid', { signs: { nowhere: [] } }, 'signs', 'unknown-region'],
    ['droopy-lid', { signs: { temple: [7] } }, 'signs', 'wrong-type'],
    ['droopy-lid', { signs: [] }, 'signs', 'wrong-type'],
    [null, {}, 'protocol', 'wrong-type'],
    [Object.create(null), {}, 'protocol', 'wrong-type'],
    [{ toString: 1 }, { language: 'fr' }, 'language', 'unknown-code'],
  ])('%j with %j is refused at %s', (protocol, options, part, code) => {
    // What a caller without types can give.
    const outcome = toQuestionnaire(protocol as string, options as QuestionnaireOptions);
    expect(outcome.ok).toBe(false);
    expect(outcome.issues.map((one) => [one.path[0], one.code])).toContainEqual([part, code]);
  });
});

function everyItem(items: readonly FormItem[]): readonly FormItem[] {
  return items.flatMap((item) => [item, ...everyItem(item.items ?? [])]);
}
