import type { Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import type { DateField } from '../../mapping/mapping.ts';
import { datesOf } from '../guess/guess-dates.ts';
import type { Sample } from '../guess/sample.ts';
import type { HeadNames } from './head-names.ts';

/** The parts `exam` and `dates` of a mapping, as far as a sample tells them. */
export function examPart(heads: HeadNames, sample: Sample, open: Issue[]): object {
  const there = (name: string | undefined): string | undefined =>
    name !== undefined && sample.fields.has(name) ? name : undefined;
  const { gender, status } = heads;
  const [exam, subject, born] = [there(heads.exam), there(heads.subject), there(heads.born)];
  const [performed, recorded] = [there(heads.performed), there(heads.recorded)];
  const [family, given, examiner] = [
    there(heads.family),
    there(heads.given),
    there(heads.examiner),
  ];
  const dates = dateForms([performed, recorded, born], sample, open);
  const forms = new Set(dates.values());
  // One form for the whole export only where nothing is left open that it would then decide.
  const shared = forms.size === 1 && dates.told;
  const dated = (name: string): DateField => {
    const form = dates.get(name);
    return shared || form === undefined ? name : { from: name, formats: [form] };
  };
  return {
    exam: {
      ...(exam !== undefined && { id: { from: [exam] } }),
      ...(there(status) !== undefined && { status: { from: status } }),
      subject: {
        ...(subject !== undefined && { identifiers: [{ from: subject }] }),
        ...(family !== undefined && { family }),
        ...(given !== undefined && { given }),
        ...(born !== undefined && { birthDate: dated(born) }),
        ...(there(gender) !== undefined && {
          gender: { from: gender, words: genderWords(gender, sample) },
        }),
      },
      performed: performed === undefined ? {} : { start: dated(performed) },
      recorded: recorded === undefined ? {} : { from: dated(recorded) },
      examiner: examiner === undefined ? {} : { name: examiner },
    },
    ...(shared && { dates: { formats: [...forms] } }),
  };
}

/** Forms by field. */
interface DateForms extends ReadonlyMap<string, string> {
  /** Every field with a date has one. */
  readonly told: boolean;
}

/** Forms of the date fields; one that can be read with the day or the month first is left open. */
function dateForms(
  names: readonly (string | undefined)[],
  sample: Sample,
  open: Issue[],
): DateForms {
  const forms = new Map<string, string>();
  let told = true;
  for (const name of names) {
    const field = sample.fields.get(name ?? '');
    if (field === undefined || field.words.length === 0) continue;
    const [form, ...others] = datesOf(field.words);
    if (form !== undefined && others.length === 0) {
      forms.set(field.name, form);
      continue;
    }
    told = false;
    open.push(
      form === undefined
        ? issue('unreadable-date', [field.name], { reason: 'sample' })
        : issue('ambiguous-mapping', [field.name], {
            reason: 'day-or-month',
            codes: [form, ...others],
          }),
    );
  }
  return Object.assign(forms, { told });
}

function genderWords(
  name: string | undefined,
  sample: Sample,
): { readonly [word: string]: string } {
  const plain = new Map([
    ['f', 'female'],
    ['female', 'female'],
    ['w', 'female'],
    ['weiblich', 'female'],
    ['männlich', 'male'],
    ['m', 'male'],
    ['male', 'male'],
  ]);
  const words = sample.fields.get(name ?? '')?.words ?? [];
  return Object.fromEntries(
    words.flatMap((word) => {
      const meaning = plain.get(word.toLowerCase());
      return meaning === undefined ? [] : [[word, meaning]];
    }),
  );
}
