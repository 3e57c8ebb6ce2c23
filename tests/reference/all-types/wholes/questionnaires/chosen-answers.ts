import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import { gender } from '../canonical.ts';
import { answer, answers, choiceOf } from './parts.ts';

/** Answers to questions with a list or a value set, sound and broken, by name. */
export function chosenAnswerCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const { choice, open, option } = choiceOf(version);
  const chosen = (value: Json, more: Json = {}): Json =>
    answers(
      [
        {
          linkId: '1',
          text: 'x',
          ...option(
            { valueCoding: { system: gender, code: 'male' } },
            { valueCoding: { system: gender, code: 'female' } },
          ),
          ...more,
        },
      ],
      [answer(value)],
    );
  return {
    'answers-option-sound': chosen({ valueCoding: { system: gender, code: 'male' } }),
    'answers-option-outside': chosen({ valueCoding: { system: gender, code: 'other' } }),
    'answers-option-in-words': chosen({ valueString: 'male' }),
    'answers-option-without-system': chosen({ valueCoding: { code: 'male' } }),
    'answers-open-option-in-words': chosen({ valueString: 'neither' }, open),
    'answers-open-option-outside': chosen({ valueCoding: { system: gender, code: 'other' } }, open),
    'answers-string-option-outside': answers(
      [
        {
          linkId: '1',
          text: 'x',
          ...option({ valueString: 'a' }, { valueString: 'b' }),
          ...(r5 ? { type: 'string' } : {}),
        },
      ],
      [answer({ valueString: 'c' })],
    ),
    'answers-string-option-sound': answers(
      [
        {
          linkId: '1',
          text: 'x',
          ...option({ valueString: 'a' }, { valueString: 'b' }),
          ...(r5 ? { type: 'string' } : {}),
        },
      ],
      [answer({ valueString: 'a' })],
    ),
    'answers-integer-option-outside': answers(
      [
        {
          linkId: '1',
          text: 'x',
          ...option({ valueInteger: 1 }),
          ...(r5 ? { type: 'integer' } : {}),
        },
      ],
      [answer({ valueInteger: 2 })],
    ),
    'answers-set-sound': answers(
      [
        {
          linkId: '1',
          text: 'x',
          type: choice,
          answerValueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender',
        },
      ],
      [answer({ valueCoding: { system: gender, code: 'male' } })],
    ),
    'answers-set-outside': answers(
      [
        {
          linkId: '1',
          text: 'x',
          type: choice,
          answerValueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender',
        },
      ],
      [answer({ valueCoding: { system: gender, code: 'banana' } })],
    ),
    'answers-set-of-other-system': answers(
      [
        {
          linkId: '1',
          text: 'x',
          type: choice,
          answerValueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender',
        },
      ],
      [answer({ valueCoding: { system: 'http://loinc.org', code: '29463-7' } })],
    ),
  };
}
