import { describe, expect, it } from 'vitest';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { licenceIssues } from '../../../src/fhir/licence/licence-gate.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { clinic } from '../../clinic.ts';
import { sampled } from '../../sampled.ts';
import {
  attempt,
  conceptUris,
  forms,
  forPeople,
  leaving,
  planted,
  spellings,
  wordless,
} from './licence-channels.ts';

describe('the licence policy over what leaves', () => {
  it('lets no planted id out, by whatever way and in whatever form', () => {
    const seen = { whole: 0, refused: 0 };
    for (let seed = 0; seed < sampled(30, 250); seed++) {
      const one = attempt(seed);
      const text = leaving(one, forms[seed % 3] ?? 'json');
      seen[text === undefined ? 'refused' : 'whole'] += 1;
      // By the text, not by the gate: whatever the gate overlooks is found here.
      expect({ seed, leaks: text?.includes(planted) ?? false }).toEqual({ seed, leaks: false });
    }
    expect(seen.whole).toBeGreaterThan(sampled(8, 20));
    expect(seen.refused).toBeGreaterThan(sampled(4, 10));
  });

  it('holds for pages, letters, recalls and figures, but for the words of the examiner', () => {
    const seen = { whole: 0, leaks: [] as number[] };
    for (let seed = 0; seed < sampled(10, 80); seed++) {
      const text = forPeople(wordless(attempt(seed)));
      if (text !== '') seen.whole += 1;
      if (text.includes(planted)) seen.leaks.push(seed);
    }
    expect(seen.leaks).toEqual([]);
    expect(seen.whole).toBeGreaterThan(sampled(4, 12));
  });

  it('says where, and nothing of the value, when an export is refused', () => {
    const exam = structuredClone(sampleExam(1, { size: 'small' }));
    const note = `see ${conceptUris[0]}`;
    Object.assign(exam.statements[0] ?? expect.fail(), { note });
    const { value, issues } = toBundle(exam);
    expect(value).toBeUndefined();
    const found = issues.filter(({ code }) => code === 'licence-policy');
    expect(found.map(({ path }) => path[0])).toContain('entry');
    expect(JSON.stringify(issues)).not.toContain(planted);
  });

  it.each(spellings)('knows %j', (system) => {
    const found = licenceIssues({ valueCoding: { system, code: planted } }, 'free-set');
    expect(found).toHaveLength(1);
  });

  it.each(conceptUris)('knows %j in a text', (uri) => {
    expect(licenceIssues({ note: [{ text: `as ${uri}.` }] }, 'free-set')).toHaveLength(1);
  });

  // Names that only look alike, systems of others, and an edition, which names no concept.
  it.each([
    'http://loinc.org',
    'http://snomed.info.example/sct',
    'https://harbour.example/snomed',
    'urn:oid:2.16.840.1.113883.6.969',
    'http://hl7.org/fhir/sid/icd-10',
    'sctx',
  ])('leaves %j alone', (system) => {
    expect(licenceIssues({ valueCoding: { system, code: planted } }, 'none')).toEqual([]);
    const version = 'http://snomed.info/sct/900000000000207008/version/20240101';
    expect(licenceIssues({ valueCoding: { system, version, code: 'a' } }, 'none')).toEqual([]);
  });
});

describe('what was sent while there was a licence', () => {
  it('is taken back without the codes that may no longer leave', () => {
    const edition = 'http://snomed.info/sct/900000000000207008/version/20240101';
    const snomed = { licensed: { holder: 'Harbour clinic', edition } };
    const before = structuredClone(sampleExam(3, { size: 'small' }));
    const coding = { system: 'http://snomed.info/sct', code: planted };
    const [first] = before.statements;
    Object.assign(first ?? expect.fail(), { codings: [coding] });
    const sent = toBundle(before, { ...clinic, snomed, bundleType: 'transaction' }).value;
    const after = { ...before, statements: before.statements.slice(1) };
    const { value, issues } = toBundle(after, {
      ...clinic,
      snomed: 'none',
      bundleType: 'transaction',
      ...(sent !== undefined && { previous: sent }),
    });
    expect(JSON.stringify(sent)).toContain(planted);
    expect(JSON.stringify(value)).toContain('entered-in-error');
    expect(JSON.stringify(value)).not.toContain('http://snomed.info');
    expect(issues.map(({ code }) => code)).toContain('withheld-code');
  });

  it('is read once where a policy answers differently each time', () => {
    let asked = 0;
    const policy = {
      get licensed() {
        asked += 1;
        return asked === 1 ? undefined : { holder: 'x', edition: 'y' };
      },
    };
    const { value } = toBundle(sampleExam(1, { size: 'small' }), { snomed: policy as never });
    expect(value).toBeUndefined();
  });
});
