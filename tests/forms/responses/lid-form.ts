import type {
  Questionnaire,
  QuestionnaireItem,
  QuestionnaireResponse,
  QuestionnaireResponseItem,
} from 'fhir/r4.js';
import {
  fromQuestionnaireResponse,
  type ResponseOptions,
  toQuestionnaire,
} from '../../../src/forms/index.ts';
import { type ExamDraft, type Outcome, orThrow } from '../../../src/index.ts';
import { head } from '../fill.ts';
export const protocol = 'droopy-lid';
export const form: Questionnaire = orThrow('make', toQuestionnaire(protocol));

/** Answers by linkId, put where the form has their items. */
export function respond(
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

export const coded = (code: string): object => ({
  valueCoding: { code, display: 'as a renderer has it' },
});

export const lid = 'region-state/lid-upper/left';
export const ptosis = 'finding/lid-position.ptosis/lid-upper/left';
export const distance = 'measurement/mrd1/lid-upper/left';
export const abnormal = { [lid]: coded('state.abnormal'), [`${lid}:methods`]: coded('inspection') };

export function read(response: unknown, more: Partial<ResponseOptions> = {}): Outcome<ExamDraft> {
  return fromQuestionnaireResponse(response, { protocol, exam: head, ...more });
}

/** Code and linkId of what was said, but for questions that are merely open. */
export function told({ issues }: Outcome<unknown>): unknown[] {
  return issues
    .filter(({ code, severity }) => code !== 'missing-property' || severity === 'error')
    .map(({ severity, code, path }) => `${severity} ${code} ${path.join(' ')}`);
}
