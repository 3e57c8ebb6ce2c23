import { describe, expect, it } from 'vitest';
import { parseClinic } from '../../src/clinic/index.ts';
import { codesFromCsv } from '../../src/convert/code-map/from-csv.ts';
import { fromCsv } from '../../src/convert/csv/index.ts';
import { dryRun } from '../../src/convert/dry-run/dry-run.ts';
import { fromHl7v2 } from '../../src/convert/hl7v2/index.ts';
import { fromXml, toXml } from '../../src/fhir/xml/index.ts';
import {
  checkExam,
  codesFromConceptMap,
  createCatalogue,
  fromBundle,
  fromJson,
  IssueError,
  licenceIssues,
  parseCheckSettings,
  parseExam,
  signExam,
  toBundle,
  toBundleOrThrow,
  toJson,
} from '../../src/index.ts';
import { type BudgetOption, budgets, within } from '../../src/issues/budget.ts';
import type { Issue } from '../../src/issues/issue.ts';
import { toHtml } from '../../src/report/to-html.ts';
import { sampleMapping, writeExams } from '../../src/testing/formats/formats.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { compileProfiles, validateBundle } from '../../src/validate/versions/r4.ts';

const exam = sampleExam(3, { size: 'usual' });
const bundle = toBundleOrThrow(exam);
const json = toJson(bundle);
const xml = toXml(bundle).value ?? '';
const step = { by: 'nurse', at: '2030-01-01T00:00:00Z' };
const map = 'source,code,system,target,relation\nfindings,x,https://quay.example,y,wider\n';

function toldBy(call: () => unknown): readonly Issue[] {
  try {
    call();
  } catch (thrown) {
    if (thrown instanceof IssueError) return thrown.issues;
    throw thrown;
  }
  return [];
}

type Call = (budget: BudgetOption) => readonly Issue[];

const ofData: Readonly<Record<string, Call>> = {
  parseExam: (budget) => parseExam(exam, { budget }).issues,
  toBundle: (budget) => toBundle(exam, { budget }).issues,
  checkExam: (budget) => checkExam(exam, { budget }).issues,
  toHtml: (budget) => toldBy(() => toHtml(exam, { checks: { budget } })),
  signExam: (budget) => signExam(exam, step, { budget }).issues,
  validateBundle: (budget) => validateBundle(bundle, { budget }).issues,
  compileProfiles: (budget) => compileProfiles([bundle], { budget }).issues,
  fromBundle: (budget) => fromBundle(bundle, { budget }).issues,
  toXml: (budget) => toXml(bundle, { budget }).issues,
  codesFromConceptMap: (budget) => codesFromConceptMap(bundle, { budget }).issues,
  createCatalogue: (budget) => createCatalogue(bundle as never, { budget }).issues, // no additions
  parseCheckSettings: (budget) => parseCheckSettings(bundle, { budget }).issues,
  parseClinic: (budget) => parseClinic(bundle, { budget }).issues,
};

const ofText: Readonly<Record<string, Call>> = {
  fromJson: (budget) => fromJson(json, { budget }).issues,
  fromXml: (budget) => fromXml(xml, { budget }).issues,
  fromCsv: (budget) => fromCsv(writeExams([exam], 'csv'), sampleMapping('csv'), { budget }).issues,
  fromHl7v2: (budget) =>
    fromHl7v2(writeExams([exam], 'hl7v2'), sampleMapping('hl7v2'), { budget }).issues,
  codesFromCsv: (budget) => codesFromCsv(map, { budget }).issues,
};

const every: Readonly<Record<string, Call>> = {
  ...ofData,
  ...ofText,
  licenceIssues: (budget) => licenceIssues(bundle, 'none', { budget }),
};

const codesOf = (issues: readonly Issue[]): string[] => issues.map(({ code }) => code);

describe('a budget', () => {
  it.each(Object.entries(every))('%s: a signal that was given ends it with an issue', (_, call) => {
    expect(codesOf(call({ signal: AbortSignal.abort() }))).toContain('aborted');
  });

  it.each(Object.entries(ofData))('%s: depth and values', (_, call) => {
    expect(codesOf(call({ depth: 2 }))).toContain('too-deep');
    expect(codesOf(call({ values: 20 }))).toContain('too-large');
  });

  it.each(Object.entries(ofText))('%s: length of the text', (_, call) => {
    expect(codesOf(call({ characters: 20 }))).toContain('too-large');
  });

  it('ends the work where it is spent, in every entry with more work than that', () => {
    const spent = Object.entries(every).filter(([, call]) =>
      call({ work: 50 }).some(({ facts }) => facts.reason === 'work'),
    );
    const names = Object.keys(every).filter((name) => name !== 'codesFromCsv');
    expect(spent.map(([name]) => name)).toEqual(names);
  });

  it('is looked at while the work goes on: a signal that a clock sets', () => {
    let looks = 0;
    const signal = {
      get aborted() {
        looks += 1;
        return looks > 3;
      },
    };
    const long = `[${'1,'.repeat(100_000)}1]`;
    expect(codesOf(fromJson(long, { budget: { signal } }).issues)).toEqual(['aborted']);
    expect(looks).toBe(4);
  });

  it('lists no more issues than it has, and counts the rest', () => {
    const nulls = { resourceType: 'Bundle', type: 'collection', entry: Array(100).fill(null) };
    const { issues } = validateBundle(nulls, { budget: { issues: 5 } });
    expect(issues).toHaveLength(6);
    expect(issues.at(-1)?.code).toBe('issues-cut');
  });

  it('looks no further than a hundred thousand faults, and says so first', () => {
    const nulls = { resourceType: 'Bundle', type: 'collection', entry: Array(150_000).fill(null) };
    const { issues, valid } = validateBundle(nulls);
    expect(valid).toBe(false);
    expect(issues[0]?.facts).toEqual({ reason: 'faults', maximum: 100_000 });
    expect(issues.at(-1)?.facts).toMatchObject({ reason: 'rest', count: 99_001 });
  });

  it('takes no more records in one call than its values have room for', () => {
    const factsOf = (records: number) => {
      const text = `exam\n${Array.from({ length: records }, (_, at) => `E-${at}\n`).join('')}`;
      const mapping = sampleMapping('csv');
      return [fromCsv, dryRun].map((call) => {
        const { issues } = call(text, mapping, { budget: { values: 40_000 } });
        return issues.map(({ facts }) => facts);
      });
    };
    const told = { reason: 'records', maximum: 1000 };
    for (const facts of factsOf(1000)) expect(facts).not.toContainEqual(told);
    for (const facts of factsOf(1001)) expect(facts).toContainEqual(told);
  });

  it('of an outer call holds for the calls inside it', () => {
    const inside = within(
      'exam',
      { work: 10 },
      () => codesOf(parseExam(exam).issues),
      ({ reason }) => [reason],
    );
    expect(inside).toEqual(['work']);
    // and no longer than that
    expect(parseExam(exam).value).toBe(exam);
  });

  it('is on by default, and wide enough for what is sound', () => {
    for (const call of Object.values(every)) {
      const codes = codesOf(call({}));
      expect(codes).not.toContain('aborted');
      expect(codes).not.toContain('too-large');
      expect(codes).not.toContain('too-deep');
    }
    expect(Object.values(budgets).every(({ work }) => work > 0)).toBe(true);
  });

  it('that is none is a mistake of the caller', () => {
    expect(() => parseExam(exam, { budget: { depth: Number.NaN } })).toThrow(TypeError);
    expect(() => parseExam(exam, { budget: { work: '9' as never } })).toThrow(TypeError);
  });
});
