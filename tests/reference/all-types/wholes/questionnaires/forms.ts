import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import { base } from '../canonical.ts';
import { choiceOf, form, group, text, when } from './parts.ts';

const one = (more: Json = {}): Json =>
  form([{ linkId: '1', text: 'Skin?', type: 'string', ...more }]);
const two = (more: Json): Json =>
  form([
    { linkId: '1', text: 'Skin?', type: 'boolean' },
    { linkId: '2', text: 'Where?', type: 'string', ...more },
  ]);

/** Questionnaires, sound and broken, by name. */
export function formCases(version: FhirRelease): Record<string, Json> {
  const { choice, open, option } = choiceOf(version);
  return {
    'form-sound': one(),
    'form-of-linkId-twice': form([text, text]),
    'form-of-linkId-twice-below': form([
      { linkId: 'g', type: 'group', text: 'g', item: [text] },
      text,
    ]),
    'form-without-linkId': one({ linkId: undefined }),
    'form-without-type': one({ type: undefined }),
    'form-of-unknown-type': one({ type: 'banana' }),
    'form-group-without-items': one({ type: 'group' }),
    'form-display-with-items': one({ type: 'display', item: [{ linkId: '2', type: 'string' }] }),
    'form-display-required': one({ type: 'display', required: true }),
    'form-display-repeats': one({ type: 'display', repeats: true }),
    'form-display-with-code': one({ type: 'display', code: [{ code: 'x' }] }),
    'form-display-readOnly': one({ type: 'display', readOnly: true }),
    'form-group-with-initial': form([{ ...group, initial: [{ valueString: 'x' }] }]),
    'form-group-with-maxLength': form([{ ...group, maxLength: 5 }]),
    'form-boolean-with-maxLength': one({ type: 'boolean', maxLength: 5 }),
    'form-string-with-options': one({ answerOption: [{ valueString: 'x' }] }),
    'form-boolean-with-options': one({ type: 'boolean', answerOption: [{ valueString: 'x' }] }),
    'form-choice-without-options': one({ type: choice }),
    'form-choice-of-options-and-set': one({
      ...option({ valueCoding: { code: 'x' } }),
      answerValueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender',
    }),
    'form-choice-of-set': one({
      type: choice,
      answerValueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender',
    }),
    'form-choice-of-contained-set-missing': one({ type: choice, answerValueSet: '#none' }),
    'form-string-of-set': one({
      type: 'decimal',
      answerValueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender',
    }),
    'form-option-without-value': one({ type: choice, answerOption: [{ initialSelected: true }] }),
    'form-option-and-initial': one({
      ...option({ valueCoding: { code: 'x' }, initialSelected: true }),
      initial: [{ valueCoding: { code: 'x' } }],
    }),
    'form-two-initials-without-repeats': one({
      initial: [{ valueString: 'a' }, { valueString: 'b' }],
    }),
    'form-initial-without-value': one({ initial: [{ id: 'x' }] }),
    'form-two-selected-without-repeats': one(
      option(
        { valueCoding: { code: 'x' }, initialSelected: true },
        { valueCoding: { code: 'y' }, initialSelected: true },
      ),
    ),
    'form-open-choice': one({ ...open, answerOption: [{ valueCoding: { code: 'x' } }] }),
    'form-when-sound': two(when()),
    'form-when-of-unknown-question': two(when({ question: '9' })),
    'form-when-of-itself': two(when({ question: '2' })),
    'form-when-of-later-question': form([
      { linkId: '1', type: 'string', text: 'x', ...when({ question: '2' }) },
      { linkId: '2', type: 'boolean', text: 'y' },
    ]),
    'form-when-without-answer': two(when({ answerBoolean: undefined })),
    'form-when-of-other-answer': two(when({ answerBoolean: undefined, answerString: 'x' })),
    'form-when-exists-of-text': two(
      when({ operator: 'exists', answerBoolean: undefined, answerString: 'x' }),
    ),
    'form-when-of-unknown-operator': two(when({ operator: 'banana' })),
    'form-when-twice-without-behavior': two({
      enableWhen: [
        { question: '1', operator: '=', answerBoolean: true },
        { question: '1', operator: 'exists', answerBoolean: true },
      ],
    }),
    'form-when-twice-with-behavior': two({
      enableBehavior: 'all',
      enableWhen: [
        { question: '1', operator: '=', answerBoolean: true },
        { question: '1', operator: 'exists', answerBoolean: true },
      ],
    }),
    'form-of-definition-in-words': one({ definition: 'a b' }),
    'form-of-name-in-words': form([text], { name: 'my form' }),
    'form-of-unknown-subject-type': form([text], { subjectType: ['Banana'] }),
    'form-derived-from-itself': form([text], { derivedFrom: [`${base}/Questionnaire/q`] }),
    'form-of-regex-extension-malformed': one({
      extension: [{ url: 'http://hl7.org/fhir/StructureDefinition/regex', valueString: '(' }],
    }),
    'form-of-control-extension-unknown': one({
      extension: [
        {
          url: 'http://hl7.org/fhir/StructureDefinition/questionnaire-itemControl',
          valueCodeableConcept: {
            coding: [{ system: 'http://hl7.org/fhir/questionnaire-item-control', code: 'banana' }],
          },
        },
      ],
    }),
    'form-of-unit-elsewhere': form([text], {
      extension: [
        {
          url: 'http://hl7.org/fhir/StructureDefinition/questionnaire-unit',
          valueCoding: { code: 'x' },
        },
      ],
    }),
  };
}
