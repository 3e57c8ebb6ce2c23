import type {
  Questionnaire,
  QuestionnaireItem,
  QuestionnaireResponse,
  QuestionnaireResponseItem,
} from 'fhir/r4.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fromQuestionnaireResponse, toQuestionnaire } from '../../../src/forms/index.ts';
import {
  builtInCatalogue,
  finishExamOrThrow,
  fromJson,
  issueText,
  orThrow,
  toBundleOrThrow,
} from '../../../src/index.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { fillAtRandom, type GivenAnswer, head, itemsOf } from '../../forms/fill.ts';
import { launch } from '../chromium.ts';
import { lhcForms } from './lhc-forms.ts';
import type { ShownForm } from './shown.ts';
import { smartForms } from './smart-forms.ts';

/**
 * Forms filled in at random in renderers that know nothing of this library, answer by answer as a
 * person does. What is read of their response is what is read of the answers themselves. Each protocol
 * with RENDERED_FORMS=all; else the smallest.
 */
const sample = process.env['RENDERED_FORMS'] === 'all' ? Number.POSITIVE_INFINITY : 1;
const seed = Number(process.env['RENDERED_SEED'] ?? 1);

const forms: readonly (readonly [string, Questionnaire])[] = [...builtInCatalogue.protocols.keys()]
  .map((protocol) => [protocol, orThrow('make', toQuestionnaire(protocol))] as const)
  .sort(([, a], [, b]) => count(a) - count(b))
  .slice(0, sample);

function count({ item }: Questionnaire): number {
  return [...itemsOf(item)].length;
}

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
}, 60_000);
afterAll(() => browser.close());

describe.each([lhcForms, smartForms])('in $name', (renderer) => {
  beforeAll(() => renderer.ready(), 900_000);

  it.each(forms)(
    'what is entered in the form of %s comes back as the exam',
    async (protocol, form) => {
      const { response, given } = fillAtRandom(form, createRandom(seed));
      const wanted = orThrow('read', read(protocol, firstFillings(response)));
      const shown = await renderer.show(browser, form);
      const items = new Map([...itemsOf(form.item)].map((item) => [item.linkId, item]));
      for (const answer of entered(given)) {
        await enter(shown, items.get(answer.linkId), answer);
      }
      await shown.page.waitForTimeout(500);
      const written = orThrow('parse', fromJson(await shown.response()));
      expect(shown.elsewhere).toEqual([]);
      await shown.page.close();

      const outcome = read(protocol, written);
      expect(outcome.issues.filter(({ severity }) => severity === 'error').map(issueText)).toEqual(
        [],
      );
      const { exam } = orThrow('read the answers', outcome);
      const keys = (one: typeof exam): string[] => one.statements.map(({ key }) => key);
      expect(keys(exam)).toEqual(keys(wanted.exam));
      expect(exam.statements).toEqual(wanted.exam.statements);
      expect(exam.conclusion).toEqual(wanted.exam.conclusion);
      // When it was written by the renderer says nothing of when was examined.
      expect(exam.performed).toEqual(head.performed);
      const bundle = toBundleOrThrow(finishExamOrThrow({ exam }, 'final'));
      expect(validateBundle(bundle).valid).toBe(true);
      console.log(`${renderer.name}: ${protocol}, ${given.length} answers`);
    },
    3_600_000,
  );
});

function read(protocol: string, response: unknown): ReturnType<typeof fromQuestionnaireResponse> {
  return fromQuestionnaireResponse(response, { protocol, exam: head });
}

async function enter(
  shown: ShownForm,
  item: QuestionnaireItem | undefined,
  { linkId, answers }: GivenAnswer,
): Promise<void> {
  if (item === undefined || item.initial !== undefined) return;
  const control = item.extension?.find(({ url }) => url.endsWith('/questionnaire-itemControl'))
    ?.valueCodeableConcept?.coding?.[0]?.code;
  for (const { valueCoding, valueString, valueDecimal, valueInteger } of answers) {
    if (valueCoding === undefined) {
      await shown.enter(linkId, String(valueString ?? valueDecimal ?? valueInteger));
    } else if (control === 'drop-down') await shown.pick(linkId, valueCoding);
    else await shown.choose(linkId, valueCoding);
  }
}

/** Of a group that was filled in twice, the first filling alone. */
function entered(given: readonly GivenAnswer[]): readonly GivenAnswer[] {
  const first = new Map<string, string>();
  return given.filter(({ round }) => {
    const group = round.slice(0, round.lastIndexOf('/'));
    if (!first.has(group)) first.set(group, round);
    return first.get(group) === round;
  });
}

/** The same in the response. */
function firstFillings(response: QuestionnaireResponse): QuestionnaireResponse {
  const firsts = (items: readonly QuestionnaireResponseItem[]): QuestionnaireResponseItem[] => {
    const met = new Set<string>();
    return items.flatMap((one) => {
      if (met.has(one.linkId)) return [];
      met.add(one.linkId);
      return [{ ...one, ...(one.item && { item: firsts(one.item) }) }];
    });
  };
  return { ...response, item: firsts(response.item ?? []) };
}
