import { dateTimeOf, innerOf, wholeOf } from '../../read/bundle/element.ts';
import { ownCode, ownValue } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { claimCommon, type Observed } from '../../read/observation/observation.ts';
import { placeOrSide } from '../../read/observation/site.ts';
import { codingsOf, filled, quantityOf } from '../../read/observation/values.ts';
import type { Symptom } from './statement.ts';

export const symptomReader: Reader<Symptom> = {
  of: ({ table }) => table === 'symptoms',
  read: readSymptom,
};

const answers = ['yes', 'no', 'unsure', 'declined', 'not-asked'] as const;
const tellers = ['patient', 'relative', 'carer', 'interpreter', 'other'] as const;
const courses = ['better', 'same', 'worse', 'comes-and-goes'] as const;

function readSymptom(observed: Observed, key: string | undefined): Read<Symptom> | undefined {
  const { reading, element } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'symptoms');
  const stated = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'answer');
  const answer = answers.find((known) => known === stated);
  if (code === undefined || answer === undefined) return undefined;
  claimCommon(observed, key, { category: 'survey' });
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'symptom',
    symptom: code.code,
    answer,
    ...placeOrSide(observed),
    ...storyOf(observed),
    ...(codings && { codings }),
  };
}

type Story = Pick<
  Symptom,
  'toldBy' | 'onset' | 'durationText' | 'duration' | 'course' | 'severity' | 'trigger'
>;

function storyOf({ components }: Observed): Story {
  const told = components.value('told-by');
  const toldBy = tellers.find((known) => known === told);
  const onset = components.first('onset');
  const began = onset && dateTimeOf(onset, 'valueDateTime');
  const durationText = components.text('duration-text');
  const lasting = components.first('duration');
  const duration = lasting && quantityOf(innerOf(lasting, 'valueQuantity'));
  const change = components.value('course');
  const course = courses.find((known) => known === change);
  const rating = components.first('severity');
  const severity = rating && wholeOf(rating, 'valueInteger');
  const trigger = components.text('trigger');
  return {
    ...(toldBy !== undefined && { toldBy }),
    ...(began !== undefined && { onset: began }),
    ...(durationText !== undefined && { durationText }),
    ...(duration && { duration }),
    ...(course !== undefined && { course }),
    ...(severity !== undefined && { severity }),
    ...(trigger !== undefined && { trigger }),
  };
}
