import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toExtractableQuestionnaire } from '../../src/forms/extract/index.ts';
import { startingResponse, toQuestionnaire } from '../../src/forms/index.ts';
import { builtInCatalogue, orThrow, toJson } from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { fillAtRandom } from '../forms/fill.ts';
import { startValidator, type Validator } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';

/** Which of the forms, each so manieth; CI takes some, since the largest keep the validator for minutes. */
const every = Number(process.env['EVERY_FORM'] ?? 1);
const protocols = [...builtInCatalogue.protocols.keys()].filter((_, at) => (at + 1) % every === 0);

let validator: Validator;
beforeAll(async () => {
  validator = await startValidator({ load: await extensionsPack() });
});
afterAll(() => validator.stop());

/** Errors, and extensions that are not known, in the eyes of HL7's validator. */
async function faultsOf(version: (typeof releases)[number], resource: unknown): Promise<string[]> {
  const text = toJson(resource);
  const { issues } = await validator.validate({ id: version, version, text });
  return issues
    .filter(({ severity, messageId }) => /error|fatal/.test(severity) || /Unknown/.test(messageId))
    .map(({ location, message }) => `${location}: ${message}`);
}

describe.each(protocols)('the form of %s', (protocol) => {
  it.each(releases)(
    'has no error in %s, and its responses have none',
    async (fhirVersion) => {
      const options = { fhirVersion, language: 'de', lastTime: true } as const;
      const form = orThrow('make the form', toQuestionnaire(protocol, options));
      expect(await faultsOf(fhirVersion, form)).toEqual([]);
      const start = orThrow('begin', startingResponse(protocol, options));
      expect(await faultsOf(fhirVersion, start)).toEqual([]);
      const asked = orThrow('make the form', toQuestionnaire(protocol));
      const { response } = fillAtRandom(asked, createRandom(1));
      expect(await faultsOf(fhirVersion, response)).toEqual([]);
    },
    600_000,
  );

  it.each(['R4', 'R5'] as const)(
    'has no error in %s with templates for extraction either',
    async (version) => {
      const options = { fhirVersion: version, language: 'de' } as const;
      const form = orThrow('make the form', toExtractableQuestionnaire(protocol, options));
      const text = toJson(form);
      const { issues } = await validator.validate({ id: `${protocol}-${version}`, version, text });
      const told = issues.map(({ location, message }) => `${location}: ${message}`);
      expect(told.filter((_, at) => /error|fatal/.test(issues[at]?.severity ?? ''))).toEqual([]);
      const unknown = issues.filter(({ messageId }) => /Unknown/.test(messageId));
      expect(
        unknown.filter(({ message }) => !templates.some((url) => message.includes(url))),
      ).toEqual([]);
    },
    3_600_000,
  );
});

/**
 * Defined in the guide to structured data capture, which is not among the packages that are loaded.
 * @see https://hl7.org/fhir/uv/sdc/extraction.html#template-based-extraction
 */
const templates = ['templateExtract', 'templateExtractContext', 'templateExtractValue'].map(
  (name) => `http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-${name}`,
);
