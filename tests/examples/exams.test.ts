import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { coverageGaps, coverExam } from '../../src/checks/coverage/coverage.ts';
import { type BundleType, parseExam, toBundle, toJson } from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { clinic } from '../clinic.ts';

function savedText(name: string): string {
  return readFileSync(new URL(`../../examples/exams/${name}.json`, import.meta.url), 'utf8');
}

const bundleTypes: readonly BundleType[] = ['collection', 'transaction', 'document'];

describe.each([...examples])('the example %s', (name, exam) => {
  it('is saved as its program makes it', () => {
    expect(savedText(name)).toBe(`${toJson(exam, { pretty: true })}\n`);
  });

  it('is an exam without errors or warnings', () => {
    expect(parseExam(JSON.parse(savedText(name)))).toEqual({ ok: true, value: exam, issues: [] });
  });

  it.each(bundleTypes)('exports as a valid R4 %s', (bundleType) => {
    const { value, issues } = toBundle(exam, { ...clinic, bundleType });
    expect(issues).toEqual([]);
    expect(validateBundle(value).issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('has the states that a real record has', () => {
    const stated = exam.statements.map((statement) =>
      statement.kind === 'region-state'
        ? statement.state
        : statement.kind === 'finding'
          ? statement.presence
          : statement.kind === 'symptom'
            ? statement.answer
            : statement.kind,
    );
    expect(stated).toEqual(
      expect.arrayContaining(['normal', 'not-examined', 'present', 'absent', 'yes', 'no', 'note']),
    );
    const sides = exam.statements.map((statement) => ('side' in statement ? statement.side : ''));
    expect(sides).toEqual(expect.arrayContaining(['right', 'left']));
    expect(exam.consents?.length).toBeGreaterThan(1);
    expect(exam.conditions?.length).toBeGreaterThan(4);
    expect(exam.instruments?.some(({ magnification }) => magnification !== undefined)).toBe(true);
    expect(exam.conclusion?.plan?.length).toBeGreaterThan(0);
    expect(exam.conclusion?.told?.length).toBeGreaterThan(0);
  });

  it('holds accents, quotes and the characters that XML and HTML reserve', () => {
    const text = JSON.stringify(exam);
    const missing = [/&/, /</, />/, /\\"/, /[À-ÿ]/].filter((wanted) => !wanted.test(text));
    expect(missing).toEqual([]);
  });
});

function gapsOf(name: string): string[] {
  const exam = examples.get(name);
  const protocol = builtInCatalogue.protocols.get(exam?.protocol.id ?? '');
  if (exam === undefined || protocol === undefined) throw new Error(`no example ${name}`);
  const { coverage } = coverExam(exam, protocol, builtInCatalogue);
  return coverageGaps(coverage).map(({ kind, code, side }) => `${kind} ${code} ${side ?? ''}`);
}

describe('coverage of the examples', () => {
  it.each(['yearly-check', 'skin-lesion', 'facial-numbness', 'drooping-lid'])(
    '%s leaves nothing of its protocol unsaid',
    (name) => {
      expect(gapsOf(name)).toEqual([]);
    },
  );

  it('an exam broken off shows its gaps: nothing of the ears was said', () => {
    expect(gapsOf('broken-off')).toEqual(
      expect.arrayContaining(['region tm right', 'region tm left', 'test cn8-whisper right']),
    );
  });
});

it('the yearly check makes well over sixty observations', () => {
  const exam = examples.get('yearly-check');
  if (exam === undefined) throw new Error('no yearly check');
  const entries: readonly { resource?: { resourceType: string } | undefined }[] =
    toBundle(exam).value?.entry ?? [];
  const observations = entries.filter(({ resource }) => resource?.resourceType === 'Observation');
  expect(observations.length).toBeGreaterThan(150);
});
