import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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
});
