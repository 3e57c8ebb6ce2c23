import { beforeAll, describe, expect, it } from 'vitest';
import { fromXml } from '../../src/fhir/xml/from-xml.ts';
import { toXml } from '../../src/fhir/xml/to-xml.ts';
import { toJson } from '../../src/index.ts';
import { orThrow } from '../../src/issues/issue.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import type { FhirRelease } from '../reference/corpus.ts';
import { bundlesOf, exampleExams } from '../reference/exams.ts';
import { ask, type Program, rustReader, whyNoRust } from './programs.ts';
import { canonical } from './same.ts';

const versions = ['R4', 'R4B', 'R5'] as const;

function corpus(version: FhirRelease) {
  const seeded = [...sampleExams(1, 12, { size: 'edge' })].map((exam) => ({ name: exam.id, exam }));
  const examples = exampleExams().filter(({ name }) => name !== 'yearly-check.json');
  return [...examples, ...seeded].flatMap((one) => bundlesOf(one, version));
}

/** fhirbolt writes the XHTML of a narrative anew, with other white space; the rest must be the same. */
function bare(text: string): string {
  return canonical(text.replace(/"div":"(?:[^"\\]|\\.)*"/g, '"div":""'));
}

/**
 * fhirbolt writes line breaks and tabs into attributes as they are, where XML makes spaces of them.
 * https://www.w3.org/TR/xml/#AVNormalize
 */
function onOneLine(json: string): string {
  return json.replace(/(?<!\\)\\(?:r\\n|[nrt])/g, ' ');
}

interface Answer {
  readonly id: string;
  readonly error?: string;
  readonly json: string;
  readonly xml: string;
}

const noRust = whyNoRust();
if (noRust !== undefined) console.warn(`skipped: ${noRust}`);

// fhirbolt writes and reads XML by definitions of its own.
describe.skipIf(noRust !== undefined).each(versions)('XML of %s and fhirbolt', (version) => {
  let reader: Program;
  beforeAll(async () => {
    reader = await rustReader();
  });

  it('is read there as the same resource', async () => {
    const bundles = corpus(version);
    const answers = await ask<Answer>(
      reader,
      bundles.map(({ id, bundle }) => {
        const text = orThrow('write XML', toXml(bundle, { fhirVersion: version }));
        return { id, version, format: 'xml', text };
      }),
    );
    const changed = bundles.filter(
      ({ text }, at) => bare(answers[at]?.json ?? 'null') !== bare(text),
    );
    expect(bundles.length).toBeGreaterThan(50);
    expect(changed.map(({ id }) => id)).toEqual([]);
  });

  it('is read here as the same resource where it was written there', async () => {
    const bundles = corpus(version);
    const answers = await ask<Answer>(
      reader,
      bundles.map(({ id, text }) => ({ id, version, format: 'json', text })),
    );
    for (const [at, { id, text }] of bundles.entries()) {
      const { value, issues } = fromXml(answers[at]?.xml ?? '', { fhirVersion: version });
      expect({ id, issues }).toEqual({ id, issues: [] });
      expect(bare(toJson(value)) === bare(onOneLine(text))).toBe(true);
    }
  });
});
