import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/index.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { parseMappingText } from '../../../src/convert/suggest/index.ts';
import { differencesOf, dryRun, toDryRun } from '../../../src/report/review/index.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { inFolder, run } from '../../cli/in-process.ts';

const folder = join(import.meta.dirname, '../../../examples/convert');
const written = readFileSync(join(folder, 'vineyard.mapping.json'), 'utf8');
// Its own test converts with it, and so its form is that of a mapping.
const mapping = parseMappingText(written).value as Mapping;
const table = readFileSync(join(folder, 'vineyard.csv'), 'utf8');

describe('dry run', () => {
  const tried = dryRun(table, mapping);
  const real = fromCsv(table, mapping);

  it('makes and sets aside what the conversion does, field by field', () => {
    expect(tried.exams.flatMap(({ exam }) => exam ?? [])).toEqual(
      real.exams.map(({ exam }) => exam),
    );
    expect(tried.ledger).toEqual(real.ledger);
    expect(tried.causes.reduce((sum, { count }) => sum + count, 0)).toBe(real.quarantine.length);
    for (const { cure, count } of tried.causes) {
      expect(cure).not.toBe('');
      expect(count).toBeGreaterThan(0);
    }
  });

  it('accounts for each field of each name', () => {
    for (const { name, fields, ...fates } of tried.coverage) {
      const sum = Object.values(fates).reduce((total, count) => total + count, 0);
      expect({ name, sum }).toEqual({ name, sum: fields });
    }
    const total = tried.coverage.reduce((sum, { fields }) => sum + fields, 0);
    expect(total).toBe(real.ledger.fields);
    const left = tried.leftovers.reduce((sum, { count }) => sum + count, 0);
    expect(left).toBe(real.ledger.verbatim);
  });

  it.each(['hl7v2', 'xml', 'cda'] as const)('puts each text of %s beside its field', (format) => {
    const text = writeExams([sampleExam(3, { size: 'usual' })], format);
    const [exam] = dryRun(text, sampleMapping(format)).exams;
    expect(exam?.exam).toBeDefined();
    const keys = new Set(exam?.exam?.statements.map(({ key }) => key));
    for (const { statement } of exam?.fields ?? []) {
      if (statement !== undefined) expect(keys.has(statement)).toBe(true);
    }
    expect(exam?.fields.some(({ text: one }) => one !== '')).toBe(true);
  });

  it('tells a second exam of an id as a cause, with the cure', () => {
    const [header, first] = table.split('\n');
    const { causes } = dryRun([header, first, first].join('\n'), mapping);
    expect(causes).toMatchObject([{ code: 'duplicate-exam', count: 1 }]);
    expect(causes[0]?.cure).toContain('exam.id.also');
  });
});

describe('difference of two mappings on one input', () => {
  const before = dryRun(table, mapping);
  const [name = '', ...rest] = Object.keys(mapping.fields ?? {});
  const fewer: Mapping = {
    ...mapping,
    fields: Object.fromEntries(rest.map((one) => [one, mapping.fields?.[one] ?? { kind: 'note' }])),
  };

  it('is nothing for the same mapping', () => {
    expect(differencesOf(before, dryRun(table, mapping))).toEqual({
      ...{ exams: [], fates: [], cutOtherwise: false },
    });
  });

  it('tells statements that are gone and that came, and fields by their fate', () => {
    const { exams, fates } = differencesOf(before, dryRun(table, fewer));
    expect(fates.map((one) => one.name)).toEqual(expect.arrayContaining([name]));
    expect(fates.every(({ from, to }) => from === 'coded' && to === 'verbatim')).toBe(true);
    expect(exams.length).toBeGreaterThan(0);
    for (const { gone, fresh } of exams) {
      expect(gone.length).toBeGreaterThan(0);
      expect(fresh.every(({ kind }) => kind === 'note')).toBe(true);
    }
  });

  it('tells an exam that is made by one of them alone, and a cut that is another', () => {
    const other: Mapping = { ...mapping, dates: { formats: ['D.M.YYYY'], zone: 'Z' } };
    const { exams } = differencesOf(before, dryRun(table, other));
    expect(exams.some(({ parts }) => parts.includes('quarantine'))).toBe(true);
    expect(differencesOf(before, dryRun(table.slice(0, 400), mapping)).cutOtherwise).toBe(true);
  });
});

describe('page of a dry run', () => {
  it('is HTML without errors or script, and tells what is counted', () => {
    const { html } = toDryRun(table, mapping, { against: mapping, most: 2 });
    const errors: string[] = [];
    parse(html, { onParseError: ({ code }) => errors.push(code) });
    expect(errors).toEqual([]);
    expect(html.includes('<script')).toBe(false);
    expect(html.includes('more are not shown')).toBe(true);
    expect(html.includes('script-src')).toBe(false);
  });

  it('holds texts of the export as text', () => {
    const evil = table.replace(/Weinlaub/g, '<img src=x onerror=alert(1)>');
    const { html } = toDryRun(evil, mapping);
    expect(html.includes('<img')).toBe(false);
  });

  it('gives issues alone for a wrong mapping or a spent budget', () => {
    // A mapping from a file is of any form.
    const wrong = toDryRun(table, { format: 'face-neck-mapping/1' } as never);
    expect(wrong.run.exams).toEqual([]);
    expect(wrong.issues.length).toBeGreaterThan(0);
    const spent = toDryRun(table, mapping, { budget: { work: 3 } });
    expect(spent.issues.map(({ facts }) => facts.reason)).toContain('work');
  });

  it('comes from the command line, with another mapping', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'a.csv'), table);
      writeFileSync(join(cwd, 'm.json'), JSON.stringify(mapping));
      const call = ['convert', 'a.csv', '--dry-run', '--mapping', 'm.json'];
      const { code, out } = await run([...call, '--against', 'm.json'], { cwd });
      expect({ code, start: out.slice(0, 15) }).toEqual({ code: 1, start: '<!DOCTYPE html>' });
      expect((await run(['convert', 'a.csv', '--dry-run'], { cwd })).code).toBe(2);
    });
  });
});
