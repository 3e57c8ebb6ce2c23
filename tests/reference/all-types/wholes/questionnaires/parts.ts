import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import { base } from '../canonical.ts';

export const form = (item: readonly Json[], more: Json = {}): Json => ({
  resourceType: 'Questionnaire',
  id: 'q',
  url: `${base}/Questionnaire/q`,
  name: 'Check',
  title: 'Check',
  status: 'active',
  item,
  ...more,
});
export const text: Json = { linkId: '1', text: 'Skin?', type: 'string' };
export const group: Json = {
  linkId: 'g',
  text: 'Head',
  type: 'group',
  item: [text, { linkId: '2', text: 'Ear?', type: 'boolean' }],
};
/** Shown where question 1 is answered with yes. */
export const when = (more: Json = {}): Json => ({
  enableWhen: [{ question: '1', operator: '=', answerBoolean: true, ...more }],
});
/** A response to a form that it contains. */
export const answers = (items: readonly Json[], given: readonly Json[], more: Json = {}): Json => ({
  resourceType: 'QuestionnaireResponse',
  id: 'r',
  status: 'completed',
  questionnaire: '#q',
  contained: [form(items)],
  item: given,
  ...more,
});
export const answer = (value: Json, linkId = '1'): Json => ({ linkId, answer: [value] });
export const typed = (type: string, value: Json, more: Json = {}): Json =>
  answers([{ linkId: '1', text: 'x', type, ...more }], [answer(value)]);

/** A question with a list of answers. */
export function choiceOf(version: FhirRelease): {
  readonly choice: string;
  readonly open: Json;
  readonly option: (...values: Json[]) => Json;
} {
  const r5 = version === 'R5';
  const choice = r5 ? 'coding' : 'choice';
  const open: Json = r5
    ? { type: 'coding', answerConstraint: 'optionsOrString' }
    : { type: 'open-choice' };
  const option = (...values: Json[]): Json => ({ type: choice, answerOption: values });
  return { choice, open, option };
}
