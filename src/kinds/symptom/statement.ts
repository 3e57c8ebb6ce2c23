import type { Code, DateTime, Quantity, Side, Text } from '../../model/primitive.ts';
import type { StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atRegion, type Meaning, type Polarity } from '../facets/meaning.ts';

/** A complaint that was asked about, told unasked, or not asked. */
export interface Symptom extends StatementBase {
  readonly kind: 'symptom';
  /** Code of terminology/symptoms.json. */
  readonly symptom: Code;
  /** `not-asked` is a statement too: the question was left out. */
  readonly answer: 'yes' | 'no' | 'unsure' | 'declined' | 'not-asked';
  readonly toldBy?: 'patient' | 'relative' | 'carer' | 'interpreter' | 'other';
  readonly region?: Code;
  readonly side?: Side;
  readonly onset?: DateTime;
  /** Duration in the words used ("a few weeks"); never turned into a date. */
  readonly durationText?: Text;
  readonly duration?: Quantity;
  readonly course?: 'better' | 'same' | 'worse' | 'comes-and-goes';
  /**
   * Numeric rating from 0 (none) to 10.
   * @asType integer
   * @minimum 0
   * @maximum 10
   */
  readonly severity?: number;
  readonly trigger?: Text;
}

const polarities: Readonly<Record<Symptom['answer'], Polarity>> = {
  yes: 'states',
  no: 'denies',
  unsure: 'open',
  declined: 'none',
  'not-asked': 'none',
};

export const symptomMeaning: Meaning<Symptom> = {
  subject: ({ symptom }) => ({ table: 'symptoms', code: symptom }),
  standing: (symptom, catalogue) => ({
    ...atRegion(symptom, catalogue, false),
    section: catalogue.symptoms.get(symptom.symptom)?.section,
  }),
  said: ({ symptom, answer }) => [
    { polarity: polarities[answer], of: { table: 'symptoms', code: symptom } },
  ],
};

export const symptomForm: Form<Symptom> = {
  codes: ({ symptom }) => [{ table: 'symptoms', code: symptom, path: ['symptom'] }],
  units: ({ duration }) =>
    duration === undefined
      ? []
      : [{ unit: duration.unit, kind: 'time', path: ['duration', 'unit'] }],
  times: ({ onset }) => [{ time: onset, after: 'onset', path: ['onset'] }],
};
