import { beforeAll, describe, expect, it } from 'vitest';
import { fromXml } from '../../src/fhir/xml/from-xml.ts';
import { toXml } from '../../src/fhir/xml/to-xml.ts';
import { toJson } from '../../src/index.ts';
import { orThrow } from '../../src/issue.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import type { FhirRelease } from '../reference/corpus.ts';
import { bundlesOf, exampleExams } from '../reference/exams.ts';
import { ask, type Program, rustReader } from './programs.ts';
import { canonical } from './same.ts';

const versions = ['R4', 'R4B', 'R5'] as const;

function* corpus(version: FhirRelease) {
  for (const one of exampleExams()) yield* bundlesOf(one, version);
  for (const exam of sampleExams(1, 10, { size: 'edge' })) {
    yield* bundlesOf({ name: exam.id, exam }, version);
  }
}

interface Answer {
  readonly id: string;
  readonly error?: string;
  readonly json: string;
  readonly xml: string;
}

// fhirbolt writes and reads XML by definitions of its own.
describe.each(versions)('XML of %s and fhirbolt', (version) => {
  let reader: Program;
  beforeAll(async () => {
    reader = await rustReader();
  });

  it('is read there as the same resource', async () => {
    const bundles = [...corpus(version)];
    const answers = await ask<Answer>(
      reader,
      bundles.map(({ id, bundle }) => {
        const text = orThrow('write XML', toXml(bundle, version));
        return { id, version, format: 'xml', text };
      }),
    );
    const changed = bundles.filter(
      ({ text }, at) => canonical(answers[at]?.json ?? 'null') !== canonical(text),
    );
    expect(bundles.length).toBeGreaterThan(50);
    expect(changed.map(({ id }) => id)).toEqual([]);
  });

  it('is read here as the same resource where it was written there', async () => {
    const bundles = [...corpus(version)];
    const answers = await ask<Answer>(
      reader,
      bundles.map(({ id, text }) => ({ id, version, format: 'json', text })),
    );
    for (const [at, { id, text }] of bundles.entries()) {
      const { value, issues } = fromXml(answers[at]?.xml ?? '', version);
      expect({ id, issues }).toEqual({ id, issues: [] });
      expect(canonical(toJson(value)) === canonical(text)).toBe(true);
    }
  });
});
