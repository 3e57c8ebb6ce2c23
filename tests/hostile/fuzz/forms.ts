import type { Questionnaire } from 'fhir/r4.js';
import {
  fromQuestionnaireResponse,
  type ResponseOptions,
  toQuestionnaire,
} from '../../../src/forms/index.ts';
import { createCatalogue, type Issue, orThrow, toBundle } from '../../../src/index.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { fillAtRandom, head } from '../../forms/fill.ts';
import { canary } from './mutate.ts';

/** Small, so that a call takes a millisecond, with a question of each kind. */
const row = {
  code: 'quay-check',
  display: 'Quay check',
  version: '1',
  regions: [
    { region: 'temple', methods: ['inspection'] },
    { region: 'jaw-motion', methods: ['function-test'] },
  ],
  points: [{ point: 'v1', modalities: ['light-touch', 'pinprick'] }],
  tests: ['frontalis', 'rinne'],
  measures: ['mio', 'lesion-max', 'whisper', 'hb', '7pcl'],
};

const system = 'https://harbour.example/codes';
const catalogue = orThrow('add', createCatalogue({ system, protocols: [row] }));
const quay = { protocol: 'quay-check', catalogue } as const;

const form: Questionnaire = orThrow('make', toQuestionnaire('quay-check', { catalogue }));

/** A response with the words of a patient in every text. */
export function response(seed: number): unknown {
  const { response: filled } = fillAtRandom(form, createRandom(seed));
  return JSON.parse(JSON.stringify(filled).replaceAll(/"Words on [^"]*"/g, `"${canary}"`));
}

/** With it the form as it was filled in. */
export function answeredForm(seed: number): unknown {
  return { response: response(seed), questionnaire: form };
}

/** What is read is exported, and is valid. */
export function readResponse(
  given: unknown,
  more: Partial<ResponseOptions> = {},
): readonly Issue[] {
  const { value, issues } = fromQuestionnaireResponse(given, {
    ...quay,
    exam: head,
    ...more,
  });
  if (value === undefined) return issues;
  const bundle = toBundle(value.exam, { allowDraft: true, catalogue });
  const wrong = validateBundle(bundle.value).issues.filter(({ severity }) => severity === 'error');
  if (bundle.value === undefined || wrong.length > 0) throw new Error('read, and not exported');
  return issues;
}

export function protocol(): unknown {
  return { protocol: 'jaw-pain', options: { signs: { temple: ['naevus'] }, language: 'de' } };
}
