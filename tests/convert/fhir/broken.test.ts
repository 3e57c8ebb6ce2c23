import { describe, expect, it } from 'vitest';
import { fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { toJson } from '../../../src/fhir/json/to-json.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';

const source = { syntax: 'fhir' } as const;
const mapping: FhirMapping = { format: 'face-neck-mapping/1', source };
const good = toJson(
  orThrow('export', toBundle(sampleExam(5, { size: 'small' }), { allowDraft: true })),
);

describe('damaged and hostile bundles', () => {
  it.each([
    ['broken off', good.slice(0, 700), 'malformed-record'],
    ['with a name twice', good.replace('{', '{"type":"batch",'), 'malformed-record'],
    ['that is no bundle', '{"resourceType":"Patient"}', 'wrong-type'],
    ['that is a history', good.replace('"collection"', '"history"'), 'invalid-value'],
    ['without an entry', '{"resourceType":"Bundle","type":"collection"}', 'missing-property'],
    ['nested a thousand times', '{"a":'.repeat(1000) + 1 + '}'.repeat(1000), 'too-deep'],
    ['of lists', '['.repeat(300) + ']'.repeat(300), undefined],
    ['with a prototype', '{"resourceType":"Bundle","__proto__":{"type":"collection"}}', undefined],
  ])('%s go to quarantine as they are', (_, text, reason) => {
    const { exams, quarantine, issues } = fromFhirBundles(text, mapping);
    expect(exams).toEqual([]);
    expect(issues).toEqual([]);
    if (reason === undefined) return;
    expect(quarantine.map((one) => [one.reason, one.raw])).toEqual([[reason, text]]);
  });

  it('on a line of their own cost no other', () => {
    const text = `${good.slice(0, 700)}\n${good}\n\nnot JSON\n`;
    const { exams, quarantine } = fromFhirBundles(text, {
      ...mapping,
      source: { ...source, form: 'lines' },
    });
    expect(exams.length).toBe(1);
    expect(quarantine.map(({ at, reason }) => [at, reason])).toEqual([
      [{ line: 1 }, 'malformed-record'],
      [{ line: 4 }, 'malformed-record'],
    ]);
  });

  it('in XML are set aside with what the reader of XML found', () => {
    const xml = '<Bundle xmlns="http://hl7.org/fhir"><type value="collection"/><oh/></Bundle>';
    const { exams, quarantine } = fromFhirBundles(xml, {
      ...mapping,
      source: { ...source, form: 'xml' },
    });
    expect(exams).toEqual([]);
    expect(quarantine.map(({ raw }) => raw)).toEqual([xml]);
  });

  it('end with an issue where the budget is spent', () => {
    const { exams, issues } = fromFhirBundles(good, mapping, { budget: { work: 10 } });
    expect(exams).toEqual([]);
    expect(issues.map(({ code }) => code)).toEqual(['too-large']);
  });

  it('are not looked at where the mapping is wrong, with the path of each fault', () => {
    const wrong = { ...mapping, exam: { protocol: { id: 'nothing', version: '1' } } };
    const { issues, quarantine } = fromFhirBundles(good, wrong);
    expect(quarantine).toEqual([]);
    expect(issues.map(({ code, path }) => [code, path])).toEqual([
      ['unknown-code', ['exam', 'protocol', 'id']],
    ]);
    const more = { ...mapping, fields: {} } as FhirMapping; // as a file could say it
    expect(fromFhirBundles(good, more).issues.map(({ code }) => code)).toEqual([
      'unknown-property',
    ]);
  });
});
