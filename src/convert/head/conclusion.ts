import type { Conclusion } from '../../model/conclusion.ts';
import type { ConcernField } from '../mapping/exam-fields.ts';
import { wordMap } from '../mapping/word-map.ts';
import { holder, keepAsText, type Work } from './work.ts';

export function conclusionOf(work: Work): Conclusion | undefined {
  const { conclusion } = work.plan.mapping.exam;
  const text = work.fields.text(conclusion?.text);
  if (conclusion === undefined || text === undefined) return undefined;
  const concern = concernOf(conclusion.concern, work);
  if (concern !== undefined) return { text, concern };
  keepAsText(work, 'unknown-word', holder(conclusion.text, work), { reason: 'concern' });
  const { from } = conclusion.concern;
  if (from !== undefined && work.fields.text(from) !== undefined) {
    keepAsText(work, 'unknown-word', from, { reason: 'concern' });
  }
  return undefined;
}

function concernOf(
  { from, words, value }: ConcernField,
  work: Work,
): Conclusion['concern'] | undefined {
  const text = work.fields.text(from);
  if (text === undefined) return value;
  return wordMap(words, work.plan.mapping.ignoreCase ?? false).get(text);
}
