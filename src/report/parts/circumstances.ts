import { type Content, element, joined, list, section, words } from '../html.ts';
import { type Page, separated } from '../page.ts';
import { quantityText } from '../teller.ts';

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
