import { dayText } from '../../report/dates.ts';
import { type Content, joined, words } from '../../report/html.ts';
import { atPlace, type Page } from '../../report/page.ts';
import type { KindPage } from '../facets/page.ts';
import type { Symptom } from './statement.ts';

/** Complaints told, with their course; those denied, or not asked about, together. */
export const symptomPage: KindPage<Symptom> = {
  tell: (symptom, page) => {
    const { teller, labels } = page;
    const name = teller.subject(symptom) + atPlace(page, symptom);
    const told = details(symptom, page);
    if (symptom.answer !== 'yes' && told.length === 0) {
      const head = labels.answers[symptom.answer] + toldBy(symptom, page);
      return { section: 'symptoms', head, of: name, tail: '' };
    }
    const answer = teller.answer('answer', symptom.answer);
    return {
      section: 'symptoms',
      line: joined(
        `${name}: ${answer}${toldBy(symptom, page)}`,
        told.map((part) => ['; ', part]),
      ),
    };
  },
};

function toldBy({ toldBy: who }: Symptom, { teller }: Page): string {
  if (who === undefined) return '';
  return ` (${teller.display('items', 'told-by')}: ${teller.answer('told-by', who)})`;
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
