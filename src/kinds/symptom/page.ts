import { joined, words } from '../../report/html.ts';
import { atPlace } from '../../report/page.ts';
import { quantityText } from '../../report/teller.ts';
import type { KindPage } from '../facets/page.ts';
import type { Symptom } from './statement.ts';

/** Complaints asked about; a question that was left out says so. */
export const symptomPage: KindPage<Symptom> = {
  tell: (symptom, page) => {
    const { teller } = page;
    const item = (code: string): string => teller.display('items', code);
    const details = [
      symptom.toldBy && `${item('told-by')}: ${teller.answer('told-by', symptom.toldBy)}`,
      symptom.onset && `${item('onset')}: ${symptom.onset}`,
      symptom.duration && `${item('duration')}: ${quantityText(symptom.duration)}`,
      symptom.durationText && words(symptom.durationText),
      symptom.course && teller.answer('course', symptom.course),
      symptom.severity !== undefined && `${item('severity')}: ${symptom.severity}`,
      symptom.trigger && joined(`${item('trigger')}: `, words(symptom.trigger)),
    ];
    return {
      section: 'symptoms',
      line: joined(
        `${teller.subject(symptom)}: ${teller.answer('answer', symptom.answer)}`,
        atPlace(page, symptom),
        ...details.map((part) => (part ? joined('; ', part) : undefined)),
      ),
    };
  },
};
