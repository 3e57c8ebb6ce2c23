import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';

const base = 'http://vineyard.example/fhir';
const gender = 'http://hl7.org/fhir/administrative-gender';

/** Questionnaires, and answers to a contained one, sound and broken, by name. */
export function questionnaireCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const choice = r5 ? 'coding' : 'choice';
  const open: Json = r5
    ? { type: 'coding', answerConstraint: 'optionsOrString' }
    : { type: 'open-choice' };
  const form = (item: readonly Json[], more: Json = {}): Json => ({
    resourceType: 'Questionnaire',
    id: 'q',
    url: `${base}/Questionnaire/q`,
    name: 'Check',
    title: 'Check',
    status: 'active',
    item,
    ...more,
  });
  const one = (more: Json = {}): Json =>
    form([{ linkId: '1', text: 'Skin?', type: 'string', ...more }]);
  const two = (more: Json): Json =>
    form([
      { linkId: '1', text: 'Skin?', type: 'boolean' },
      { linkId: '2', text: 'Where?', type: 'string', ...more },
    ]);
  const when = (more: Json = {}): Json => ({
    enableWhen: [{ question: '1', operator: '=', answerBoolean: true, ...more }],
  });
  const option = (...values: Json[]): Json => ({ type: choice, answerOption: values });
  const answers = (items: readonly Json[], given: readonly Json[], more: Json = {}): Json => ({
    resourceType: 'QuestionnaireResponse',
    id: 'r',
    status: 'completed',
    questionnaire: '#q',
    contained: [form(items)],
    item: given,
    ...more,
  });
  const text: Json = { linkId: '1', text: 'Skin?', type: 'string' };
  const answer = (value: Json, linkId = '1'): Json => ({ linkId, answer: [value] });
  const typed = (type: string, value: Json, more: Json = {}): Json =>
    answers([{ linkId: '1', text: 'x', type, ...more }], [answer(value)]);
  const group: Json = {
    linkId: 'g',
    text: 'Head',
    type: 'group',
    item: [text, { linkId: '2', text: 'Ear?', type: 'boolean' }],
  };
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
    'answers-sound': answers([text], [answer({ valueString: 'x' })]),
    'answers-of-nothing': answers([text], []),
    'answers-without-form': {
      resourceType: 'QuestionnaireResponse',
      status: 'completed',
      ...(r5 ? { questionnaire: `${base}/Questionnaire/none` } : {}),
      item: [answer({ valueString: 'x' })],
    },
    'answers-to-missing-contained': {
      resourceType: 'QuestionnaireResponse',
      status: 'completed',
      questionnaire: '#none',
      item: [],
    },
    'answers-of-unknown-linkId': answers([text], [answer({ valueString: 'x' }, '9')]),
    'answers-without-linkId': answers([text], [{ answer: [{ valueString: 'x' }] }]),
    'answers-of-other-type': answers([text], [answer({ valueBoolean: true })]),
    'answers-in-other-order': answers(
      [text, { linkId: '2', text: 'y', type: 'string' }],
      [answer({ valueString: 'x' }, '2'), answer({ valueString: 'x' }, '1')],
    ),
    'answers-required-missing': answers([{ ...text, required: true }], []),
    'answers-required-without-answer': answers([{ ...text, required: true }], [{ linkId: '1' }]),
    'answers-required-missing-in-progress': answers(
      [{ ...text, required: true }],
      [{ linkId: '1' }],
      { status: 'in-progress' },
    ),
    'answers-two-without-repeats': answers(
      [text],
      [{ linkId: '1', answer: [{ valueString: 'x' }, { valueString: 'y' }] }],
    ),
    'answers-two-with-repeats': answers(
      [{ ...text, repeats: true }],
      [{ linkId: '1', answer: [{ valueString: 'x' }, { valueString: 'y' }] }],
    ),
    'answers-one-linkId-twice': answers(
      [text],
      [answer({ valueString: 'x' }), answer({ valueString: 'y' })],
    ),
    'answers-too-long': answers([{ ...text, maxLength: 3 }], [answer({ valueString: 'long' })]),
    'answers-of-text-that-differs': answers(
      [text],
      [{ ...answer({ valueString: 'x' }), text: 'Ear?' }],
    ),
    'answers-group-sound': answers(
      [group],
      [{ linkId: 'g', item: [answer({ valueString: 'x' })] }],
    ),
    'answers-group-with-answer': answers(
      [group],
      [{ linkId: 'g', answer: [{ valueString: 'x' }] }],
    ),
    'answers-group-left-out': answers([group], [answer({ valueString: 'x' })]),
    'answers-group-twice': answers(
      [group],
      [
        { linkId: 'g', item: [answer({ valueString: 'x' })] },
        { linkId: 'g', item: [answer({ valueString: 'x' })] },
      ],
    ),
    'answers-item-and-answer': answers(
      [text],
      [{ linkId: '1', answer: [{ valueString: 'x' }], item: [answer({ valueString: 'x' }, '2')] }],
    ),
    'answers-below-answer': answers(
      [{ ...text, item: [{ linkId: '2', text: 'y', type: 'string' }] }],
      [{ linkId: '1', answer: [{ valueString: 'x', item: [answer({ valueString: 'y' }, '2')] }] }],
    ),
    'answers-below-item-that-must-be-below-answer': answers(
      [{ ...text, item: [{ linkId: '2', text: 'y', type: 'string' }] }],
      [{ linkId: '1', item: [answer({ valueString: 'y' }, '2')] }],
    ),
    'answers-to-display': answers(
      [{ linkId: '1', text: 'x', type: 'display' }],
      [answer({ valueString: 'x' })],
    ),
    'answers-to-display-without': answers(
      [{ linkId: '1', text: 'x', type: 'display' }],
      [{ linkId: '1' }],
    ),
    'answers-decimal-as-integer': typed('decimal', { valueInteger: 1 }),
    'answers-integer-as-decimal': typed('integer', { valueDecimal: 1.5 }),
    'answers-date-as-dateTime': typed('date', { valueDateTime: '2026-03-04' }),
    'answers-dateTime-sound': typed('dateTime', { valueDateTime: '2026-03-04T10:00:00Z' }),
    'answers-time-sound': typed('time', { valueTime: '10:00:00' }),
    'answers-url-as-text': typed('url', { valueString: 'x' }),
    'answers-url-sound': typed('url', { valueUri: 'http://vineyard.example' }),
    'answers-text-sound': typed('text', { valueString: 'x' }),
    'answers-text-with-lines': typed('text', { valueString: 'x\ny' }),
    'answers-string-with-lines': typed('string', { valueString: 'x\ny' }),
    'answers-quantity-as-decimal': typed('quantity', { valueDecimal: 1 }),
    'answers-quantity-sound': typed('quantity', { valueQuantity: { value: 1 } }),
    'answers-reference-sound': typed('reference', { valueReference: { reference: 'Patient/1' } }),
    'answers-attachment-sound': typed('attachment', {
      valueAttachment: { contentType: 'text/plain', url: 'http://vineyard.example' },
    }),
    'answers-coding-for-boolean': typed('boolean', { valueCoding: { code: 'true' } }),
    'answers-boolean-sound': typed('boolean', { valueBoolean: false }),
    'answers-without-value': answers([text], [{ linkId: '1', answer: [{ id: 'x' }] }]),
    'answers-of-extension-value': answers(
      [text],
      [
        answer({
          _valueString: {
            extension: [
              {
                url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason',
                valueCode: 'unknown',
              },
            ],
          },
        }),
      ],
    ),
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
    'answers-disabled': answers(
      [
        { linkId: '1', text: 'x', type: 'boolean' },
        { linkId: '2', text: 'y', type: 'string', ...when() },
      ],
      [answer({ valueBoolean: false }), answer({ valueString: 'x' }, '2')],
    ),
    'answers-enabled': answers(
      [
        { linkId: '1', text: 'x', type: 'boolean' },
        { linkId: '2', text: 'y', type: 'string', ...when() },
      ],
      [answer({ valueBoolean: true }), answer({ valueString: 'x' }, '2')],
    ),
    'answers-required-disabled': answers(
      [
        { linkId: '1', text: 'x', type: 'boolean' },
        { linkId: '2', text: 'y', type: 'string', required: true, ...when() },
      ],
      [answer({ valueBoolean: false })],
    ),
    'answers-required-enabled': answers(
      [
        { linkId: '1', text: 'x', type: 'boolean' },
        { linkId: '2', text: 'y', type: 'string', required: true, ...when() },
      ],
      [answer({ valueBoolean: true })],
    ),
    'answers-without-status': answers([text], [], { status: undefined }),
    'answers-by-wrong-author': answers([text], [], { author: { reference: 'Observation/1' } }),
    'answers-in-bundle': {
      resourceType: 'Bundle',
      type: 'collection',
      entry: [
        { fullUrl: `${base}/Questionnaire/q`, resource: form([text]) },
        {
          fullUrl: `${base}/QuestionnaireResponse/r`,
          resource: {
            resourceType: 'QuestionnaireResponse',
            id: 'r',
            status: 'completed',
            questionnaire: `${base}/Questionnaire/q`,
            item: [answer({ valueBoolean: true })],
          },
        },
      ],
    },
  };
}
