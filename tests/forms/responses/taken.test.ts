import type { QuestionnaireResponseItem } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { startingResponse } from '../../../src/forms/index.ts';
import {
  finishExamOrThrow,
  fromJson,
  measured,
  normal,
  orThrow,
  startExam,
  toBundleOrThrow,
} from '../../../src/index.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { fillAtRandom, head } from '../fill.ts';
import { differencesOf } from '../stands.ts';
import { abnormal, coded, distance, form, lid, protocol, read, respond, told } from './lid-form.ts';

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
