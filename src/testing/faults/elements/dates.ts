import { type DataFault, dataFaults, type Fault, type JsonObject } from '../fault.ts';
import { all, answering, inOne, type Place, resources, setting } from '../place.ts';
import { invariant, primitive } from '../rules.ts';

/** Faults of dates and times. */
export const dateFaults: readonly Fault[] = dataFaults('date', [
  dateTime('date-not-in-calendar', 'a day that no calendar has', '2031-02-30'),
  dateTime('leap-day-in-common-year', 'the 29th of February in a year without one', '2031-02-29'),
  dateTime('month-13', 'a month that no year has', '2031-13-01'),
  dateTime('month-00', 'a month zero', '2031-00-01'),
  dateTime('day-00', 'a day zero', '2031-04-00'),
  dateTime('hour-25', 'an hour that no day has', '2031-04-17T25:00:00+02:00'),
  dateTime('hour-24', 'an hour 24, which FHIR does not write', '2031-04-17T24:00:00+02:00'),
  dateTime('minute-60', 'a minute that no hour has', '2031-04-17T10:60:00+02:00'),
  dateTime('time-without-zone', 'a time without zone', '2031-04-17T10:00:00'),
  dateTime('time-without-minutes', 'a time to the hour', '2031-04-17T10+02:00'),
  dateTime('time-without-seconds', 'a time to the minute', '2031-04-17T10:00+02:00'),
  dateTime('time-after-space', 'a space between day and time', '2031-04-17 10:00:00+02:00'),
  dateTime('zone-without-colon', 'a zone without colon', '2031-04-17T10:00:00+0200'),
  dateTime('zone-too-far', 'a zone further from UTC than any', '2031-04-17T10:00:00+15:00'),
  dateTime('zone-of-date', 'a date with a zone', '2031-04-17Z'),
  dateTime('date-with-slashes', 'a date with slashes', '17/04/2031'),
  dateTime('date-without-hyphens', 'a date without hyphens', '20310417'),
  dateTime('date-of-one-digit', 'a month of one digit', '2031-4-17'),
  dateTime('year-of-two-digits', 'a year of two digits', '31-04-17'),
  dateTime('year-of-five-digits', 'a year of five digits', '20310-04-17'),
  dateTime('date-in-words', 'a date in words', 'April 2031'),
  dateTime('date-with-space-after', 'a date with a space after it', '2031-04-17 '),
  {
    id: 'instant-without-time',
    title: 'a date stands where a moment must',
    rule: primitive('instant'),
    code: 'value',
    plant: setting(all('Observation', 'DiagnosticReport'), 'issued', '2031-04-17'),
  },
  {
    id: 'instant-without-zone',
    title: 'a moment without zone',
    rule: primitive('instant'),
    code: 'value',
    plant: setting(all('Observation', 'DiagnosticReport'), 'issued', '2031-04-17T10:20:00'),
  },
  {
    id: 'instant-not-in-calendar',
    title: 'a moment of a day that no calendar has',
    rule: primitive('instant'),
    code: 'value',
    plant: setting(all('Observation', 'DiagnosticReport'), 'issued', '2031-04-31T10:20:00+02:00'),
  },
  {
    id: 'bundle-time-not-in-calendar',
    title: 'the time of the bundle is of a day that no calendar has',
    rule: primitive('instant'),
    code: 'value',
    plant: setting(whole, 'timestamp', '2031-06-31T10:20:00+02:00'),
  },
  {
    id: 'birth-date-with-time',
    title: 'a date of birth with a time',
    rule: primitive('date'),
    code: 'value',
    plant: setting(all('Patient'), 'birthDate', '1979-04-02T00:00:00+01:00'),
  },
  {
    id: 'birth-date-not-in-calendar',
    title: 'a date of birth that no calendar has',
    rule: primitive('date'),
    code: 'value',
    plant: setting(all('Patient'), 'birthDate', '1979-02-31'),
  },
  {
    id: 'period-reversed',
    title: 'a period ends before it begins',
    rule: invariant('per-1', 'Period'),
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'Observation', 'DiagnosticReport'), random, (object) => {
        delete object['effectiveDateTime'];
        object['effectivePeriod'] = {
          start: '2031-04-17T10:00:00+02:00',
          end: '2031-04-17T09:00:00+02:00',
        };
        return ['effectivePeriod'];
      }),
  },
  {
    id: 'period-reversed-across-zones',
    title: 'a period that ends before it begins once the zones are reckoned with',
    rule: invariant('per-1', 'Period'),
    code: 'invariant',
    plant: answering({
      valuePeriod: { start: '2031-04-17T10:00:00+02:00', end: '2031-04-17T10:30:00+03:00' },
    }),
  },
  {
    id: 'period-reversed-in-identifier',
    title: 'an identifier whose time of use ends before it begins',
    rule: invariant('per-1', 'Period'),
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'Patient'), random, (object) => {
        object['identifier'] = [
          {
            system: 'https://harbour-clinic.example/badges',
            value: 'B-7',
            period: { start: '2030', end: '2029' },
          },
        ];
        return ['identifier', 0, 'period'];
      }),
  },
]);

/** A fault of the time at which something was observed. */
function dateTime(id: string, title: string, text: string): DataFault {
  return {
    id,
    title,
    rule: primitive('dateTime'),
    code: 'value',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'Observation', 'DiagnosticReport'), random, (object) => {
        delete object['effectivePeriod'];
        object['effectiveDateTime'] = text;
        return ['effectiveDateTime'];
      }),
  };
}

function whole(bundle: JsonObject): Place[] {
  return [{ object: bundle, path: [] }];
}
