import { type Content, words } from '../../report/html.ts';
import { type Page, separated } from '../../report/page.ts';
import type { KindPage } from '../facets/page.ts';
import type { Measurement } from './statement.ts';

export const measurementPage: KindPage<Measurement> = {
  tell: (measurement, page) => {
    const { value, comparator, unit, side } = measurement;
    return {
      table: 'measures',
      name: rowName(measurement, page),
      side,
      answer: answerText(measurement, page),
      brief: `${briefName(measurement, page)}: ${valueText(measurement, page)}`,
      figure: value === undefined || comparator !== undefined ? undefined : { value, unit },
    };
  },
};

/**
 * Measure, place where it is not the usual one, and conditions: lesions of two places, and pupils in
 * the light and in the dark, stand in rows of their own.
 */
function rowName(measurement: Measurement, page: Page): string {
  const { teller, catalogue } = page;
  const { measure, region, conditions = [] } = measurement;
  const usual = catalogue.measures.get(measure)?.region === region;
  const place = usual ? [] : [teller.place(region, undefined)];
  return [teller.subject(measurement), ...place, ...conditionNames(conditions, page)].join(', ');
}

function briefName(measurement: Measurement, page: Page): string {
  const { conditions = [] } = measurement;
  return [page.teller.subject(measurement), ...conditionNames(conditions, page)].join(', ');
}

function conditionNames(conditions: readonly string[], { teller }: Page): string[] {
  return conditions.map((code) => teller.display('measureConditions', code));
}

function valueText(measurement: Measurement, { teller }: Page): string | undefined {
  const { value, unit, comparator } = measurement;
  if (value === undefined) return undefined;
  return teller.quantity({ value, unit, ...(comparator && { comparator }) });
}

function answerText(measurement: Measurement, page: Page): Content {
  const { teller, exam } = page;
  const { unusable, readings, convention, about } = measurement;
  const measured = about && exam.statements.find(({ key }) => key === about);
  return separated([
    valueText(measurement, page),
    unusable && words(teller.reason(unusable)),
    readings && `(${readings.join(', ')})`,
    convention && teller.answer('convention', convention),
    measurement.estimated === true && teller.display('items', 'estimated'),
    measured && teller.subject(measured),
    measurement.place && words(measurement.place),
  ]);
}
