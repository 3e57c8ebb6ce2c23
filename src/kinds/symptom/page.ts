import { dayText } from '../../report/dates.ts';
import { type Content, joined, words } from '../../report/html.ts';
import { atPlace, type Page } from '../../report/page.ts';
import { wordOf } from '../../report/words/report-words.ts';
import type { KindPage } from '../facets/page.ts';
import type { Symptom } from './statement.ts';

/**
 * Complaints told, with their course. What was denied, or not answered, says so of each complaint by
 * itself: in a list under one "no" the second line would read as told.
 */
export const symptomPage: KindPage<Symptom> = {
  tell: (symptom, page) => {
    const { teller, labels } = page;
    const place = atPlace(page, symptom);
    const told = details(symptom, page);
    const by = toldBy(symptom, page);
    const more = told.map((part): Content => ['; ', part]);
    if (symptom.answer === 'yes') {
      const answer = teller.answer('answer', symptom.answer);
      const given = by === undefined ? '' : ` (${by})`;
      const line = joined(`${teller.subject(symptom)}${place}: ${answer}${given}`, more);
      return { section: 'symptoms', line };
    }
    const isDenied = symptom.answer === 'no';
    const said = isDenied
      ? teller.absence(symptom)
      : `${wordOf(labels.answers, symptom.answer)}: ${teller.subject(symptom)}`;
    const behind = [isDenied ? labels.whenAsked : undefined, by].filter((one) => one !== undefined);
    const tail = behind.length === 0 ? '' : ` (${behind.join('; ')})`;
    const head = said + place;
    return told.length === 0
      ? { section: 'symptoms', head, of: undefined, tail }
      : { section: 'symptoms', line: joined(head + tail, more) };
  },
};

function toldBy({ toldBy: who }: Symptom, { teller }: Page): string | undefined {
  return who && `${teller.display('items', 'told-by')}: ${teller.answer('told-by', who)}`;
}

function details(symptom: Symptom, { teller, labels }: Page): Content[] {
  const item = (code: string): string => teller.display('items', code);
  return [
    symptom.onset && `${item('onset')}: ${dayText(symptom.onset, labels.dates)}`,
    symptom.duration && `${item('duration')}: ${teller.quantity(symptom.duration)}`,
    symptom.durationText && words(symptom.durationText),
    symptom.course && teller.answer('course', symptom.course),
    symptom.severity !== undefined && `${item('severity')}: ${symptom.severity}`,
    symptom.trigger && joined(`${item('trigger')}: `, words(symptom.trigger)),
  ].filter((part) => part !== undefined && part !== false && part !== '');
}
