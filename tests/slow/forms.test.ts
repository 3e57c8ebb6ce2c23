import type { Questionnaire } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { fromQuestionnaireResponse, toQuestionnaire } from '../../src/forms/index.ts';
import {
  builtInCatalogue,
  type FhirVersion,
  finishExamOrThrow,
  fromBundleOrThrow,
  issueText,
  orThrow,
  toBundleOrThrow,
} from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { validateBundle as r4 } from '../../src/validate/versions/all-r4.ts';
import { validateBundle as r4b } from '../../src/validate/versions/all-r4b.ts';
import { validateBundle as r5 } from '../../src/validate/versions/all-r5.ts';
import { fillAtRandom, head, itemsOf } from '../forms/fill.ts';
import { differencesOf } from '../forms/stands.ts';

/** How often each form is filled in; CI takes a part of it. */
const fillings = Number(process.env['FILLED_FORMS'] ?? 200);

const protocols = [...builtInCatalogue.protocols.keys()];

const validators = { R4: r4, R4B: r4b, R5: r5 } as const;
const versions: readonly FhirVersion[] = ['R4', 'R4B', 'R5'];

describe.each(protocols)('the form of %s', (protocol) => {
  const form: Questionnaire = orThrow('make the form', toQuestionnaire(protocol));

  it('is a valid Questionnaire of each version and language, each linkId once', () => {
    for (const fhirVersion of versions) {
      for (const language of ['en', 'de'] as const) {
        const made = toQuestionnaire(protocol, { fhirVersion, language, lastTime: true });
        const { issues, unchecked } = validators[fhirVersion](made.value);
        expect(issues.map(issueText)).toEqual([]);
        // That linkIds differ is not looked at by the fast level in a form as large as the largest.
        expect(unchecked.filter(({ rule }) => rule !== 'que-2')).toEqual([]);
      }
    }
    const keys = [...itemsOf(form.item)].map(({ linkId }) => linkId);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it(`filled in at random ${fillings} times becomes the exam that was answered, conforms and comes back`, () => {
    for (let seed = 1; seed <= fillings; seed++) {
      const { response, given } = fillAtRandom(form, createRandom(seed));
      const read = fromQuestionnaireResponse(response, {
        protocol,
        exam: { ...head, id: `quay-${seed}` },
        unanswered: 'refuse',
      });
      const draft = orThrow(`read filling ${seed}`, read);
      expect(differencesOf(draft.exam, given), `filling ${seed}`).toEqual([]);
      const exam = finishExamOrThrow(draft, 'final');
      for (const fhirVersion of versions) {
        const bundle = toBundleOrThrow(exam, { fhirVersion });
        const { valid, issues } = validators[fhirVersion](bundle);
        const faults = valid ? [] : issues.map(issueText);
        expect(faults, `filling ${seed}, ${fhirVersion}`).toEqual([]);
        expect(fromBundleOrThrow(bundle), `filling ${seed}, ${fhirVersion}`).toEqual(exam);
      }
    }
  }, 3_600_000);
});
