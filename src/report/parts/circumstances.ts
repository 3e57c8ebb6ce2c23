import { type Content, element, section, words } from '../html.ts';
import { type Page, separated } from '../page.ts';
import { answered } from '../teller.ts';

/** Consents, conditions and instruments. */
export function circumstancePart({ exam, labels, teller, catalogue }: Page): Content {
  const consents = (exam.consents ?? []).map((consent) =>
    separated([
      answered(teller.answer('consent-to', consent.to), teller.answer('consent', consent.answer)),
      consent.purpose && words(consent.purpose),
      consent.note && words(consent.note),
    ]),
  );
  const conditions = (exam.conditions ?? []).map((condition) => {
    const values = catalogue.conditions.get(condition.condition)?.values;
    return separated([
      condition.value === undefined
        ? teller.display('conditions', condition.condition)
        : answered(
            teller.display('conditions', condition.condition),
            teller.inner(values, condition.value),
          ),
      condition.regions?.map((region) => teller.place(region, condition.side)).join(', '),
      condition.note && words(condition.note),
    ]);
  });
  const instruments = (exam.instruments ?? []).map((instrument) =>
    separated([
      teller.display('instruments', instrument.type),
      instrument.magnification && `× ${instrument.magnification}`,
      instrument.resolution && teller.quantity(instrument.resolution),
      instrument.detail && words(instrument.detail),
    ]),
  );
  return section(
    'circumstances',
    labels.circumstances,
    paragraph(consents),
    paragraph(conditions),
    instruments.length > 0 && [element('h3', {}, labels.instruments), paragraph(instruments)],
  );
}

/** Short things one after the other, with a dot between. */
function paragraph(parts: readonly Content[]): Content {
  return parts.length > 0 && element('p', {}, separated(parts, ' · '));
}
