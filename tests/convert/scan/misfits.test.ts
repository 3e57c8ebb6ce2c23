import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nearName } from '../../../src/convert/scan/near-name.ts';
import { misfits } from '../../../src/convert/suggest/index.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { inFolder, run } from '../../cli/in-process.ts';
import { csvMapping } from '../csv/suite.ts';

const header = Object.keys(csvMapping.fields ?? {});
const [first = '', second = ''] = header;

/** The columns that the mapping names, none of them missing. */
function columns(): string[] {
  const { missing } = misfits('x\ny\n', csvMapping);
  return [...missing.map(({ name }) => name), ...(csvMapping.layout ?? [])];
}

/** A table with these columns and one row of words. */
function tableOf(names: readonly string[]): string {
  return `${names.join(',')}\n${names.map(() => 'word').join(',')}\n`;
}

describe('a mapping beside a changed export', () => {
  it('fits what it was made for', () => {
    const { missing, unnamed, unlisted, issues } = misfits(tableOf(columns()), csvMapping);
    expect({ missing, unnamed, unlisted, issues }).toEqual({
      ...{ missing: [], unnamed: [], unlisted: [], issues: [] },
    });
  });

  it('tells a column that is gone, one that came, and one that was renamed', () => {
    const names = columns().filter((name) => name !== second);
    const renamed = names.map((name) => (name === first ? `${first.replace('_', ' ')}` : name));
    const found = misfits(tableOf([...renamed, 'hat size']), csvMapping);
    expect(found.missing).toContainEqual({ name: second, part: 'fields' });
    expect(found.unnamed).toContainEqual({ name: 'hat size', filled: 1 });
    expect(found.missing.find(({ name }) => name === first)?.near).toBe(first.replace('_', ' '));
  });

  it('tells items that came and items that did not', () => {
    const mapping = sampleMapping('hl7v2');
    const text = writeExams([sampleExam(3, { size: 'usual' })], 'hl7v2');
    const fitting = misfits(text, mapping);
    expect(fitting.unlisted).toEqual([]);
    const items = (mapping.items ?? []).map((one) => ({
      ...one,
      map: Object.fromEntries(Object.entries(one.map).slice(0, 1)),
    }));
    expect(misfits(text, { ...mapping, items }).unlisted.length).toBeGreaterThan(3);
  });

  it('misses of a preset only what the mapping says itself', () => {
    const text = writeExams([sampleExam(3, { size: 'usual' })], 'cda');
    const mapping = {
      format: 'face-neck-mapping/1',
      use: 'c-cda',
      dates: { zone: 'Europe/Lisbon' },
      exam: {
        id: { prefix: 'harbour' },
        subject: {
          identifiers: [{ from: 'ClinicalDocument/gone/@extension', system: 'https://a.example' }],
        },
        protocol: { id: 'full', version: '1.0.0' },
      },
    } as const;
    const found = misfits(text, mapping);
    expect(found.issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(found.missing.map(({ name }) => name)).toEqual(['ClinicalDocument/gone/@extension']);
  });

  it('says nothing of names where the first row is data, and gives issues for a wrong mapping', () => {
    const found = misfits('V0417,2024-02-05,4\nV0417,2024-02-05,4\n', csvMapping);
    expect(found).toMatchObject({ headless: true, unnamed: [] });
    // A mapping from a file is of any form.
    const wrong = misfits('a\n', { format: 'face-neck-mapping/1' } as never);
    expect(wrong.missing).toEqual([]);
    expect(wrong.issues.length).toBeGreaterThan(0);
  });
});

describe('near names', () => {
  it.each([
    ['MRD1_R', 'MRD1 R'],
    ['Ptosis right', 'right ptosis'],
    ['worker_number', 'worker_numbr'],
    ['OberlidRechts', 'oberlid_rechts'],
  ])('%s and %s', (name, other) => {
    expect(nearName(name, ['hat size', other])).toBe(other);
  });

  it.each([
    ['MRD1_R', 'MRD1_L'],
    ['MRD1_R', 'MRD2_R'],
    ['ptosis right', 'ptosis left'],
    ['ptosisr', 'ptosisl'],
    ['Cornea OD', 'Cornea OS'],
    ['node IIA', 'node IIB'],
    ['fissure (mm)', 'fissure (cm)'],
    ['keloid', 'no keloid'],
  ])('never %s and %s', (name, other) => {
    expect(nearName(name, [other])).toBeUndefined();
  });
});

it('convert --misfits writes text or JSON, and ends with 1 where a name is gone', async () => {
  await inFolder(async (cwd) => {
    writeFileSync(join(cwd, 'm.json'), JSON.stringify(csvMapping));
    writeFileSync(join(cwd, 'a.csv'), tableOf(columns().slice(1)));
    const call = ['convert', 'a.csv', '--misfits', '--mapping', 'm.json'];
    const text = await run(call, { cwd });
    expect(text).toMatchObject({ code: 1, err: '' });
    expect(text.out).toContain(`not in the export: ${columns()[0]}`);
    const json = await run([...call, '--format', 'json'], { cwd });
    expect(JSON.parse(json.out).missing).toHaveLength(1);
    expect((await run(['convert', 'a.csv', '--misfits'], { cwd })).code).toBe(2);
  });
});
