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
      figure: value === undefined || comparator !== undefined ? undefined : { value, unit },
    };
  },
};

/**
 * Measure, place where it is not the usual one, and conditions: lesions of two places, and pupils in
 * the light and in the dark, stand in rows of their own.
 */
function rowName(measurement: Measurement, { teller, catalogue }: Page): string {
  const { measure, region, conditions = [] } = measurement;
  const usual = catalogue.measures.get(measure)?.region === region;
  return [
    teller.subject(measurement),
    ...(usual ? [] : [teller.place(region, undefined)]),
    ...conditions.map((code) => teller.display('measureConditions', code)),
  ].join(', ');
}

function answerText(measurement: Measurement, { teller, exam }: Page): Content {
  const { value, comparator = '', unit, unusable, readings, convention, about } = measurement;
  const measured = about && exam.statements.find(({ key }) => key === about);
  return separated([
    value === undefined ? undefined : `${comparator}${value} ${unit}`,
    unusable && words(teller.reason(unusable)),
    readings && `(${readings.join(', ')})`,
    convention && teller.answer('convention', convention),
    measurement.estimated === true && teller.display('items', 'estimated'),
    measured && teller.subject(measured),
    measurement.place && words(measurement.place),
  ]);
}
