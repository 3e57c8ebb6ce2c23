import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import { datesOf } from './guess-dates.ts';
import type { HeadNames } from './head-names.ts';
import type { Sample } from './sample.ts';

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
  const formats = dateForms([performed, recorded, born], sample, open);
  return {
    exam: {
      ...(exam !== undefined && { id: { from: [exam] } }),
      ...(there(status) !== undefined && { status: { from: status } }),
      subject: {
        ...(subject !== undefined && { identifiers: [{ from: subject }] }),
        ...(family !== undefined && { family }),
        ...(given !== undefined && { given }),
        ...(born !== undefined && { birthDate: born }),
        ...(there(gender) !== undefined && {
          gender: { from: gender, words: genderWords(gender, sample) },
        }),
      },
      performed: performed === undefined ? {} : { start: performed },
      recorded: recorded === undefined ? {} : { from: recorded },
      examiner: examiner === undefined ? {} : { name: examiner },
    },
    ...(formats.length > 0 && { dates: { formats } }),
  };
}

/** Forms of the date fields; one that can be read with the day or the month first is left open. */
function dateForms(
  names: readonly (string | undefined)[],
  sample: Sample,
  open: Issue[],
): readonly string[] {
  const forms = new Set<string>();
  for (const name of names) {
    const field = sample.fields.get(name ?? '');
    if (field === undefined) continue;
    const [form, other] = datesOf(field.words);
    if (form !== undefined && other === undefined) forms.add(form);
    else if (form === undefined) {
      open.push(issue('unreadable-date', [field.name], { reason: 'sample' }));
    } else {
      open.push(
        issue('ambiguous-mapping', [field.name], {
          reason: 'day-or-month',
          codes: [form, other ?? ''],
        }),
      );
    }
  }
  return [...forms];
}

function genderWords(
  name: string | undefined,
  sample: Sample,
): { readonly [word: string]: string } {
  const plain = new Map([
    ['f', 'female'],
    ['female', 'female'],
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
