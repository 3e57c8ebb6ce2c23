import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import { base } from '../canonical.ts';
import { answer, answers, form, group, text, typed, when } from './parts.ts';

/** Answers by place, number and type, and those that a condition hides, sound and broken, by name. */
export function answerCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  return {
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
