import type { Questionnaire, Resource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { toExtractableQuestionnaire } from '../../src/forms/extract/index.ts';
import {
  fromQuestionnaireResponse,
  type QuestionnaireOptions,
  toQuestionnaire,
} from '../../src/forms/index.ts';
import { createCatalogue, issueText, orThrow } from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { validateBundle } from '../../src/validate/versions/all-r4.ts';
import { validateBundle as validateR5 } from '../../src/validate/versions/all-r5.ts';
import { sampled } from '../sampled.ts';
import { fillAtRandom, head, itemsOf } from './fill.ts';

// What an engine makes of the templates is looked at in tests/readers/extraction.test.ts.

const sdc = 'http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire';

function formOf(protocol: string, options: QuestionnaireOptions = {}): Questionnaire {
  return orThrow('make', toExtractableQuestionnaire(protocol, { ...options, fhirVersion: 'R4' }));
}

const jaw = formOf('jaw-pain');

/** With a small form that has every kind of question. */
const catalogue = orThrow(
  'add',
  createCatalogue({
    system: 'https://harbour.example/codes',
    protocols: [
      {
        code: 'quay-check',
        display: 'Quay check',
        version: '2',
        regions: [{ region: 'temple', methods: ['inspection', 'palpation'] }],
        points: [{ point: 'v3', modalities: ['light-touch'] }],
        tests: ['cn5-open'],
        measures: ['hb', 'whisper', 'lesion-max', 'mio'],
      },
    ],
  }),
);

/** LinkIds by the id of the template that is extracted there. */
function places({ item }: Questionnaire): Map<string, string> {
  return new Map(
    [...itemsOf(item)].flatMap(({ linkId, extension = [] }) =>
      extension
        .filter(({ url }) => url === `${sdc}-templateExtract`)
        .map(({ extension: [part] = [] }) => [part?.valueReference?.reference ?? '', linkId]),
    ),
  );
}

/** What is contained besides the lists of answers. */
function templates({ contained = [] }: Questionnaire): Resource[] {
  return contained.filter(({ resourceType }) => resourceType !== 'ValueSet');
}

describe('a form with templates', () => {
  it('has no fault in R4 and R5, in both languages', () => {
    const protocol = sampled('quay-check', 'full');
    for (const language of ['en', 'de'] as const) {
      const r4 = validateBundle(formOf(protocol, { language, catalogue }));
      const options = { fhirVersion: 'R5', language, catalogue } as const;
      const r5 = validateR5(toExtractableQuestionnaire(protocol, options).value);
      const issues = [...r4.issues, ...r5.issues].filter(({ severity }) => severity === 'error');
      expect(issues.map(issueText)).toEqual([]);
    }
  });

  it('is the same form otherwise', () => {
    const { contained, item, ...rest } = jaw;
    const plain = orThrow('make', toQuestionnaire('jaw-pain'));
    expect(rest).toEqual({ ...plain, contained: undefined, item: undefined });
    const lists = plain.contained ?? [];
    expect(contained?.slice(0, lists.length)).toEqual(lists);
    expect(templates(jaw).length).toBeGreaterThan(50);
    const bare = JSON.stringify(item, (name, value) => {
      if (name !== 'extension') return value;
      const others = value.filter((one: { url: string }) => one.url !== `${sdc}-templateExtract`);
      return others.length === 0 ? undefined : others;
    });
    expect(JSON.parse(bare)).toEqual(JSON.parse(JSON.stringify(plain.item)));
  });

  it('has a template at each question from which a statement comes', () => {
    const at = places(jaw);
    expect([...at.keys()].sort()).toEqual(
      templates(jaw)
        .map(({ id }) => `#${id}`)
        .sort(),
    );
    expect([...at.values()]).toEqual(
      expect.arrayContaining([
        'protocol',
        'conclusion:text',
        'conclusion:concern',
        'region-state/tmj/left:methods',
        'region-state/tmj/left:reason',
        'region-state/tmj/left:further',
        'finding/tmj-click/tmj/left',
        'sensation/v3/left:pinprick',
        'movement/cn5-open',
        'measurement/mio/jaw-motion',
        'note/tmj',
      ]),
    );
    expect([...at.values()]).not.toContain('region-state/tmj/left');
  });

  it('states no answer that was not given', () => {
    const template = (linkId: string): object | undefined => {
      const [id] = [...places(jaw)].find(([, one]) => one === linkId) ?? [];
      return jaw.contained?.find((one) => `#${one.id}` === id);
    };
    expect(settled(template('finding/tmj-click/tmj/left'))).toEqual([]);
    const found = templates(jaw).flatMap((one) =>
      one.id === places(jaw).get('protocol') ? [] : settled(one),
    );
    // Only which protocol was followed is known beforehand, since its item has that answer fixed.
    expect(new Set(found)).toEqual(new Set(['jaw-pain']));
  });

  it('says in the language of the form what its answers say', () => {
    const german = JSON.stringify(formOf('jaw-pain', { language: 'de' }).contained);
    expect(german).toContain('"text":"Kiefergelenk, links"');
    expect(german).not.toContain('"text":"Temporomandibular joint');
  });

  it('is read like the form without', () => {
    const { response } = fillAtRandom(jaw, createRandom(7));
    const options = { protocol: 'jaw-pain', exam: head } as const;
    const read = fromQuestionnaireResponse(response, { ...options, questionnaire: jaw });
    expect(read).toEqual(fromQuestionnaireResponse(response, options));
    expect(read.ok).toBe(true);
  });

  it('takes scores, and measures of a chosen place', () => {
    const at = [...places(formOf('quay-check', { catalogue })).values()];
    expect(at).toEqual(
      expect.arrayContaining([
        'scale-score/hb/right',
        'measurement/whisper/hearing/left',
        'measurement/lesion-max',
      ]),
    );
  });
});

/** Codes that stand as an answer in a template without a condition or an expression. */
function settled(resource: object | undefined): string[] {
  // The place and the code of a template are known beforehand; what is said of them is not.
  const { bodySite: _, ...said } = { bodySite: undefined, ...resource };
  return codesIn(said, false);
}

function codesIn(value: unknown, isAnswer: boolean): string[] {
  if (Array.isArray(value)) return value.flatMap((one) => codesIn(one, isAnswer));
  if (typeof value !== 'object' || value === null) return [];
  const members = Object.entries(value);
  if (members.some(([name, one]) => name === 'extension' && isCondition(one))) return [];
  return members.flatMap(([name, member]) => {
    if (name === 'extension') return [];
    if (isAnswer && name === 'code' && typeof member === 'string') return [member];
    return codesIn(member, isAnswer || answers.test(name));
  });
}

/** The unit of a figure is that of the question. */
const answers = /^(?:value[A-PR-Z]|interpretation|dataAbsentReason)/;

function isCondition(extension: unknown): boolean {
  return JSON.stringify(extension).includes(`${sdc}-templateExtractContext`);
}
