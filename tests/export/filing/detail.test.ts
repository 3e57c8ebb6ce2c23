import { describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import { type Detail, toBundle, toBundleOrThrow, toJson } from '../../../src/index.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { withOnly } from '../../../src/testing/without.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { validateBundle as validateR4b } from '../../../src/validate/versions/r4b.ts';
import { validateBundle as validateR5 } from '../../../src/validate/versions/r5.ts';
import { sampled } from '../../sampled.ts';

const exams = [
  ...[...examples.values()].slice(0, sampled(3, 6)),
  ...sampleExams(900, sampled(3, 8), { size: 'edge' }),
];

describe('a copy of what is notable', () => {
  it('comes back as the exam with fewer statements, and says how many are left out', () => {
    let left = 0;
    for (const exam of exams) {
      const { value: bundle, issues } = toBundle(exam, { detail: 'notable' });
      const told = issues.find(({ facts }) => facts.reason === 'detail');
      const read = fromBundle(bundle);
      const keys = new Set(read.value?.statements.map(({ key }) => key));
      const kept = exam.statements.filter(({ key }) => keys.has(key));
      expect(read.value, exam.id).toEqual({ ...exam, statements: kept });
      expect(read.remainder).toEqual([]);
      const count = exam.statements.length - kept.length;
      expect(told === undefined ? 0 : JSON.parse(JSON.stringify(told.facts)).count).toBe(count);
      const warned = read.issues.filter(({ facts }) => facts.reason === 'detail');
      expect(warned).toHaveLength(count === 0 ? 0 : 1);
      expect(validateBundle(bundle).issues.filter(({ severity }) => severity === 'error')).toEqual(
        [],
      );
      left += count;
    }
    expect(left).toBeGreaterThan(200);
  });

  it('keeps whatever is found, measured, not examined or written', () => {
    for (const exam of exams) {
      const read = fromBundle(toBundleOrThrow(exam, { detail: 'notable' })).value;
      const keys = new Set(read?.statements.map(({ key }) => key));
      const gone = exam.statements.filter(({ key }) => !keys.has(key));
      for (const one of gone) {
        // Spelled out here, apart from the rule of the library.
        const { kind } = one;
        expect(['measurement', 'scale-score', 'note', 'image'], exam.id).not.toContain(kind);
        expect(one.note).toBeUndefined();
        const words = JSON.stringify(one);
        expect(words).not.toMatch(/"state":"(?:abnormal|not-examined|partial|not-there)"/);
        expect(words).not.toMatch(/"presence":"indeterminate"/);
      }
    }
  });

  it('holds whatever the conclusion rests on', () => {
    for (const exam of exams) {
      const read = fromBundle(toBundleOrThrow(exam, { detail: 'notable' })).value;
      const keys = new Set(read?.statements.map(({ key }) => key));
      for (const key of exam.conclusion?.basedOn ?? []) expect(keys.has(key)).toBe(true);
    }
  });

  it('is the whole where nothing is merely normal', () => {
    const [exam] = exams;
    if (exam === undefined) throw new Error('no example');
    const noted = withOnly(
      exam,
      exam.statements.filter(({ kind }) => kind === 'note'),
      new Set(['consents', 'conditions']),
    );
    expect(toJson(toBundleOrThrow(noted, { detail: 'notable' }))).toBe(
      toJson(toBundleOrThrow(noted)),
    );
  });
});

describe('the report alone', () => {
  const versions = ['R4', 'R4B', 'R5'] as const;
  const validators = { R4: validateBundle, R4B: validateR4b, R5: validateR5 };
  const page = { contentType: 'text/plain', content: 'As examined.' };
  const alone = { detail: 'report', presentedForms: () => [page] } as const;

  it.each(versions)('holds the page as report and as document, and people: %s', (fhirVersion) => {
    for (const exam of examples.values()) {
      const bundle = toBundleOrThrow(exam, { ...alone, fhirVersion });
      const types = (bundle.entry ?? []).map(({ resource }) => resource?.resourceType);
      expect(types.filter((type) => type === 'DiagnosticReport')).toHaveLength(1);
      expect(types.filter((type) => type === 'DocumentReference')).toHaveLength(1);
      expect(types).not.toContain('Observation');
      const { issues } = validators[fhirVersion](bundle);
      expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
  });

  it('says what it leaves out, with and without narrative', () => {
    for (const exam of examples.values()) {
      for (const narrative of [true, false]) {
        const text = toJson(toBundleOrThrow(exam, { ...alone, narrative }));
        expect(text).toContain('This is the report alone.');
        const count = exam.statements.length;
        expect(text).toContain(`that do not stand here: ${count}<`);
      }
    }
  });

  it.each(versions)(
    'comes back as head and conclusion, and the loss is told: %s',
    (fhirVersion) => {
      for (const exam of examples.values()) {
        const filing = { security: [{ system: 'https://clinic.example/labels', code: 'R' }] };
        const bundle = toBundleOrThrow(exam, { ...alone, fhirVersion, filing });
        const unread = fromBundle(bundle, { filing });
        expect(unread.ok).toBe(false);
        expect(unread.issues.map(({ facts }) => facts.reason)).toContain('report-alone');
        const { protocol } = exam;
        const { value, remainder, issues } = fromBundle(bundle, { filing, supplied: { protocol } });
        const { format, id, status, subject, examiners, performed, recorded } = exam;
        const head = { format, id, status, subject, examiners, performed, recorded, protocol };
        expect(value).toMatchObject({
          ...head,
          ...(exam.organization && { organization: exam.organization }),
          ...(exam.encounter && { encounter: exam.encounter }),
        });
        const words = exam.conclusion === undefined ? [] : [exam.conclusion.text];
        const texts = value?.statements.map((one) => (one.kind === 'note' ? one.text : one.kind));
        expect(texts).toEqual(words);
        expect(remainder.filter(({ kind }) => kind === 'content')).toEqual([]);
        expect(issues.map(({ facts }) => facts.reason)).toContain('report-alone');
      }
    },
  );

  it('is not a document, and without a form that is told', () => {
    const [exam] = exams;
    if (exam === undefined) throw new Error('no example');
    const { value, issues } = toBundle(exam, { detail: 'report', bundleType: 'document' });
    expect(value).toBeUndefined();
    expect(issues.map(({ path }) => path)).toContainEqual(['detail']);
    const bare = toBundle(exam, { detail: 'report' });
    expect(bare.ok).toBe(true);
    expect(bare.issues.map(({ path }) => path)).toContainEqual(['presentedForms']);
  });
});

describe('each level', () => {
  it('is smaller than the one before it', () => {
    const yearly = examples.get('yearly-check');
    if (yearly === undefined) throw new Error('no example');
    const sizes = (['everything', 'notable', 'report'] as const).map((detail: Detail) => {
      const bundle = toBundleOrThrow(yearly, { detail });
      return { entries: bundle.entry?.length ?? 0, bytes: toJson(bundle).length };
    });
    expect(sizes).toEqual([...sizes].sort((a, b) => b.bytes - a.bytes));
    expect(sizes[1]?.entries).toBeLessThan((sizes[0]?.entries ?? 0) * 0.8);
  });
});
