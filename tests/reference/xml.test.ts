import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toXml } from '../../src/fhir/xml/to-xml.ts';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { orThrow } from '../../src/issues/issue.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { type ReferenceResult, startValidator, type Validator } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';

let validator: Validator;
beforeAll(async () => {
  validator = await startValidator({ load: await extensionsPack() });
});
afterAll(() => validator.stop());

function errors({ issues }: ReferenceResult): string[] {
  return issues
    .filter(({ severity }) => severity === 'error' || severity === 'fatal')
    .map(({ location, message }) => `${location}: ${message}`);
}

describe.each(releases)('XML of %s', (version) => {
  const exams = [...sampleExams(1, 5, { size: 'small' }), ...sampleExams(1, 4, { size: 'edge' })];
  it.each(exams)(
    'has no error, and as many issues of each severity as the JSON: $id',
    async (exam) => {
      const bundle = toBundleOrThrow(exam, { fhirVersion: version });
      const text = orThrow('write XML', toXml(bundle, { fhirVersion: version }));
      const inXml = await validator.validate({ id: 'xml', version, format: 'xml', text });
      expect(errors(inXml)).toEqual([]);
      const inJson = await validator.validate({ id: 'json', version, text: toJson(bundle) });
      const severities = (result: ReferenceResult) =>
        result.issues.map(({ severity }) => severity).sort();
      expect(severities(inXml)).toEqual(severities(inJson));
    },
  );

  it('is refused where its elements are out of order or of no namespace', async () => {
    const [exam] = sampleExams(1, 1, { size: 'small' });
    const bundle = toBundleOrThrow(exam ?? expect.fail(), { fhirVersion: version });
    const sound = orThrow('write XML', toXml(bundle, { fhirVersion: version }));
    const swapped = sound.replace(/(<type value="collection"\/>)(<timestamp [^>]*>)/, '$2$1');
    const bare = sound.replace(' xmlns="http://hl7.org/fhir"', '');
    for (const text of [swapped, bare]) {
      expect(text).not.toBe(sound);
      const result = await validator.validate({ id: 'x', version, format: 'xml', text });
      expect(result.valid).toBe(false);
    }
  });
});
