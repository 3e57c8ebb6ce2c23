import { dateReader } from '../../values/date.ts';
import { dateFormat } from '../../values/date-format.ts';

/** Forms that are tried, in this order. */
const forms: readonly string[] = [
  'YYYY-MM-DD',
  'YYYY-MM-DDTHH:mm:ssZ',
  'YYYY-MM-DDTHH:mm:ss',
  'YYYY-MM-DDTHH:mm',
  'YYYY-MM-DD HH:mm:ss',
  'YYYY-MM-DD HH:mm',
  'YYYYMMDD',
  'YYYYMMDDHHmm',
  'YYYYMMDDHHmmss',
  'YYYY/MM/DD',
  'YYYY.MM.DD',
  'DD/MM/YYYY',
  'MM/DD/YYYY',
  'D/M/YYYY',
  'M/D/YYYY',
  'DD/MM/YYYY HH:mm',
  'MM/DD/YYYY HH:mm',
  'DD.MM.YYYY',
  'DD.MM.YYYY HH:mm',
  'DD-MM-YYYY',
  'MM-DD-YYYY',
  'DD MMM YYYY',
  'DD-MMM-YYYY',
  'DD/MM/YY',
  'MM/DD/YY',
];

/** Forms that read every one of some texts; several where the day and month cannot be told apart. */
export function datesOf(texts: readonly string[]): readonly string[] {
  if (texts.length === 0) return [];
  const fitting = forms.filter((form) => {
    const format = dateFormat(form);
    if (format === undefined) return false;
    const read = dateReader([format], { formats: [form], centuryFrom: 1930 });
    return texts.every((text) => read(text).value !== undefined);
  });
  // A form with two digits for each part says more than the same with one or two.
  const has = (form: string): boolean => fitting.includes(form);
  return fitting.filter(
    (form) =>
      !(form === 'D/M/YYYY' && has('DD/MM/YYYY')) && !(form === 'M/D/YYYY' && has('MM/DD/YYYY')),
  );
}
