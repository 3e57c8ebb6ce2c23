import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FhirResource, QuestionnaireResponse } from 'fhir/r4.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toExtractableQuestionnaire } from '../../src/forms/extract/index.ts';
import { fromQuestionnaireResponse, toQuestionnaire } from '../../src/forms/index.ts';
import {
  builtInCatalogue,
  type Exam,
  type FhirVersion,
  finishExamOrThrow,
  issueText,
  orThrow,
  type Statement,
  toBundleOrThrow,
} from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { validateBundle as r4 } from '../../src/validate/versions/r4.ts';
import { validateBundle as r5 } from '../../src/validate/versions/r5.ts';
import { fillAtRandom, head, itemsOf } from '../forms/fill.ts';
import { Comparison, known } from './extracted.ts';
import { ask, extractionEngine, type Program } from './programs.ts';

// What an engine that knows nothing of this library extracts from a response by the templates of its
// form, beside what is read from the same response and exported. Differences are those of the table.
// https://hl7.org/fhir/uv/sdc/extraction.html#template-based-extraction

/** How often each form is filled in; the largest keeps the engine for more than a second a filling. */
const fillings = Number(process.env['FILLED_FORMS'] ?? 3);

const folder = fileURLToPath(new URL('../../output/readers/forms/', import.meta.url));
const protocols = [...builtInCatalogue.protocols.keys()];
const validators = { R4: r4, R5: r5 };
const met = new Set<string>();
let compared = 0;

let engine: Program;
beforeAll(async () => {
  mkdirSync(folder, { recursive: true });
  engine = await extractionEngine();
});
afterAll(() => console.log(`${compared} resources extracted as they are exported`));

interface Extracted {
  readonly resources: readonly FhirResource[];
  readonly issues: readonly string[];
}

describe.each(protocols)('the form of %s', (protocol) => {
  it.each([
    ['R4', 1, fillings],
    ['R5', 1001, Math.ceil(fillings / 20)],
  ] as const)(
    'gives in %s by extraction what is exported',
    async (fhirVersion, first, count) => {
      const form = orThrow('make', toExtractableQuestionnaire(protocol, { fhirVersion }));
      const asked = orThrow('make', toQuestionnaire(protocol));
      const file = join(folder, `${protocol}-${fhirVersion}.json`);
      writeFileSync(file, JSON.stringify(form));
      const seeds = Array.from({ length: count }, (_, at) => first + at);
      const responses = seeds.map((seed): QuestionnaireResponse => {
        const { response } = fillAtRandom(asked, createRandom(seed));
        return { ...response, id: `filled-${seed}` };
      });
      const requests = responses.map((response) => ({ form: file, response }));
      const answers = await ask<Extracted>(engine, requests);
      const linkIds = new Set([...itemsOf(asked.item)].map(({ linkId }) => linkId));
      for (const [at, { resources, issues }] of answers.entries()) {
        expect(issues).toEqual([]);
        const response = responses[at] ?? {
          resourceType: 'QuestionnaireResponse',
          status: 'completed',
        };
        const comparison = new Comparison(linkIds);
        const from = `QuestionnaireResponse/${response.id}`;
        const extracted = comparison.extracted(resources, response.authored ?? '', from);
        const exported = comparison.exported(exportedFrom(protocol, response, fhirVersion));
        const both = `${protocol}, filling ${seeds[at]}`;
        expect(difference(exported, extracted), `exported alone: ${both}`).toEqual([]);
        expect(difference(extracted, exported), `extracted alone: ${both}`).toEqual([]);
        compared += extracted.length;
        for (const row of comparison.met) met.add(row);
        const bundle = { resourceType: 'Bundle', type: 'collection', entry: entries(resources) };
        const { valid, issues: faults } = validators[fhirVersion](bundle);
        expect(valid ? [] : faults.map(issueText), both).toEqual([]);
      }
    },
    36_000_000,
  );
});

it('every difference of the table is met, and no other', () => {
  expect([...met].sort()).toEqual([...known].sort());
});

it('takes its status and people from the response, and nothing from a question left open', async () => {
  const form = orThrow('make', toExtractableQuestionnaire('jaw-pain'));
  const file = join(folder, 'jaw-pain-open.json');
  writeFileSync(file, JSON.stringify(form));
  const response = {
    resourceType: 'QuestionnaireResponse',
    status: 'in-progress',
    subject: { reference: 'Patient/417', display: 'Invented Picker' },
    author: { reference: 'Practitioner/7' },
    encounter: { reference: 'Encounter/9' },
    authored: '2025-05-06',
    item: [
      {
        linkId: 'region/tmj',
        item: [{ linkId: 'note/tmj', answer: [{ valueString: "Clicks 'louder' \\ 50 %" }] }],
      },
    ],
  };
  const [answer] = await ask<Extracted>(engine, [{ form: file, response }]);
  expect(answer?.resources).toHaveLength(1);
  expect(answer?.resources[0]).toMatchObject({
    resourceType: 'Observation',
    status: 'preliminary',
    subject: { reference: 'Patient/417' },
    encounter: { reference: 'Encounter/9' },
    performer: [{ reference: 'Practitioner/7' }],
    effectiveDateTime: '2025-05-06',
    valueString: "Clicks 'louder' \\ 50 %",
  });
  expect(answer?.resources[0]).not.toHaveProperty('issued');
});

function exportedFrom(
  protocol: string,
  response: QuestionnaireResponse,
  fhirVersion: FhirVersion,
): readonly FhirResource[] {
  const read = fromQuestionnaireResponse(response, { protocol, exam: head });
  const exam = finishExamOrThrow(orThrow('read the answers', read), 'final');
  const apart: Exam = { ...exam, statements: exam.statements.flatMap(modalitiesApart) };
  const bundle = toBundleOrThrow(apart, { fhirVersion });
  // What both versions have in common is compared.
  return (bundle.entry ?? []).flatMap(({ resource }) => (resource as FhirResource) ?? []);
}

/** As the row `sensation-apart` has it. */
function modalitiesApart(statement: Statement): readonly Statement[] {
  if (statement.kind !== 'sensation') return [statement];
  return statement.results.map((result) => ({
    ...statement,
    key: `${statement.key}/${result.modality}`,
    results: [result],
  }));
}

function entries(resources: readonly FhirResource[]): object[] {
  return resources.map((resource, at) => ({
    fullUrl: `https://clinic.example/${resource.resourceType}/e${at}`,
    resource: { ...resource, id: `e${at}` },
  }));
}

/** What the first has and the second has not, or more seldom. */
function difference(some: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return some.filter((one) => {
    const at = left.indexOf(one);
    if (at === -1) return true;
    left.splice(at, 1);
    return false;
  });
}
