import type { Symptom } from '../../model/statement.ts';
import { type Content, element, joined, list, section, words } from '../html.ts';
import { type Page, remarks, separated } from '../page.ts';
import { ofKind, quantityText } from '../teller.ts';

/** Complaints asked about; a question that was left out says so. */
export function symptomPart(page: Page): Content {
  const { exam, labels } = page;
  return section(
    'symptoms',
    labels.symptoms,
    list(ofKind(exam, 'symptom').map((one) => symptomText(page, one))),
  );
}

function symptomText(page: Page, symptom: Symptom): Content {
  const { teller } = page;
  const item = (code: string): string => teller.display('items', code);
  return joined(
    `${teller.subject(symptom)}: ${teller.answer('answer', symptom.answer)}`,
    separated(['', symptom.region && ` – ${teller.place(symptom.region, symptom.side)}`], ''),
    separated(
      [
        '',
        symptom.toldBy && `${item('told-by')}: ${teller.answer('told-by', symptom.toldBy)}`,
        symptom.onset && `${item('onset')}: ${symptom.onset}`,
        symptom.duration && `${item('duration')}: ${quantityText(symptom.duration)}`,
        symptom.durationText && words(symptom.durationText),
        symptom.course && teller.answer('course', symptom.course),
        symptom.severity !== undefined && `${item('severity')}: ${symptom.severity}`,
        symptom.trigger && joined(`${item('trigger')}: `, words(symptom.trigger)),
      ].map((part) => (part ? joined('; ', part) : undefined)),
      '',
    ),
    remarks(page, symptom),
  );
}

/** Notes verbatim, pictures by title: a page holds no picture of itself. */
export function notePart(page: Page): Content {
  const { exam, labels, teller } = page;
  return joined(
    section(
      'notes',
      labels.notes,
      list(
        ofKind(exam, 'note').map((note) =>
          joined(
            note.region && element('strong', {}, `${teller.place(note.region, note.side)}: `),
            element('span', { class: 'verbatim' }, words(note.text)),
            remarks(page, note),
          ),
        ),
      ),
    ),
    section(
      'pictures',
      labels.pictures,
      list(
        ofKind(exam, 'image').map((image) =>
          joined(
            words(image.title),
            ` – ${teller.place(image.region, image.side)}; `,
            `${teller.display('items', 'photo-consent')}: ${teller.answer('consent', image.consent)}`,
            remarks(page, image),
          ),
        ),
      ),
    ),
  );
}

/** Reason, consents, conditions and instruments. */
export function circumstancePart({ exam, labels, teller, catalogue }: Page): Content {
  const { indication } = exam;
  const consents = (exam.consents ?? []).map((consent) =>
    separated([
      `${teller.answer('consent-to', consent.to)}: ${teller.answer('consent', consent.answer)}`,
      consent.purpose && words(consent.purpose),
      consent.note && words(consent.note),
    ]),
  );
  const conditions = (exam.conditions ?? []).map((condition) => {
    const values = catalogue.conditions.get(condition.condition)?.values;
    return separated([
      teller.display('conditions', condition.condition) +
        (condition.value === undefined ? '' : `: ${teller.inner(values, condition.value)}`),
      condition.regions?.map((region) => teller.place(region, condition.side)).join(', '),
      condition.note && words(condition.note),
    ]);
  });
  const instruments = (exam.instruments ?? []).map((instrument) =>
    separated([
      teller.display('instruments', instrument.type),
      instrument.magnification && `× ${instrument.magnification}`,
      instrument.resolution && quantityText(instrument.resolution),
      instrument.detail && words(instrument.detail),
    ]),
  );
  return section(
    'circumstances',
    labels.circumstances,
    indication &&
      element(
        'p',
        {},
        separated([
          words(indication.text),
          indication.visit && teller.answer('visit', indication.visit),
          indication.urgency && teller.answer('urgency', indication.urgency),
          indication.question && words(indication.question),
          indication.background && words(indication.background),
        ]),
      ),
    list([...consents, ...conditions]),
    instruments.length > 0 && joined(element('h3', {}, labels.instruments), list(instruments)),
  );
}
