import { describe, expect, it } from 'vitest';
import { toBundleOrThrow } from '../../../src/export/to-bundle.ts';
import type { Exam } from '../../../src/model/exam.ts';
import type { Statement } from '../../../src/model/statement.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { bare } from './bare-exam.ts';

describe('the observations of an exam alone', () => {
  it('are read where the rest is supplied', () => {
    const note: Statement = { key: 'n', kind: 'note', text: 'Seen' };
    const { entry = [] } = toBundleOrThrow({ ...bare, statements: [note] });
    const observations = entry.filter(({ resource }) => resource?.resourceType === 'Observation');
    const bundle = { resourceType: 'Bundle', type: 'collection', entry: observations };
    const { value, issues } = fromBundle(bundle, { supplied: bare });
    expect(issues).toEqual([]);
    expect(value).toMatchObject({ id: 'check-1', statements: [note], protocol: bare.protocol });
    expect(fromBundle(bundle).issues.map(({ message }) => message)).toContain(
      'the bundle does not state the status of the exam',
    );
  });
});

describe('a bundle of ours that was damaged', () => {
  const exam: Exam = {
    ...bare,
    statements: [
      {
        key: 'm',
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '4.0',
        unit: 'mm',
      },
      { key: 'n', kind: 'note', text: 'Seen' },
    ],
    conclusion: { text: 'Well', concern: 'none', basedOn: ['m'] },
  };
  interface Damaged {
    entry: { resource: { identifier?: { value: string }[] } & Record<string, unknown> }[];
  }
  function damage(change: (measurement: Record<string, unknown>) => void): object {
    const bundle = structuredClone(toBundleOrThrow(exam)) as unknown as Damaged;
    const found = bundle.entry.find(
      ({ resource }) => resource.identifier?.[0]?.value === 'check-1|m',
    );
    if (found === undefined) throw new Error('the exam has a measurement');
    change(found.resource);
    return bundle;
  }

  it('keeps a statement that lost its value as a note under its key, and says so', () => {
    const { value, issues } = fromBundle(damage((resource) => delete resource.valueQuantity));
    expect(value?.statements[0]).toMatchObject({
      key: 'm',
      kind: 'note',
      text: 'Margin reflex distance 1',
      region: 'lid-upper',
      side: 'left',
    });
    expect(value?.conclusion?.basedOn).toEqual(['m']);
    expect(issues.map(({ code }) => code)).toEqual(['unread-statement']);
  });

  it('leaves out a part that the rules refuse, and says where its report stands', () => {
    const bundle = structuredClone(
      toBundleOrThrow({
        ...exam,
        history: [{ action: 'sign', by: 'a', at: '2024-03-01T09:30:00Z', version: 1 }],
      }),
    );
    const json = JSON.stringify(bundle).replace(
      '"recorded":"2024-03-01T09:30:00Z"',
      '"recorded":"2023-03-01T09:30:00Z"',
    );
    const { value, issues, remainder } = fromBundle(JSON.parse(json));
    expect(value?.history).toBeUndefined();
    expect(issues.map(({ code, path }) => [code, path])).toEqual([
      ['reversed-dates', ['entry', 0, 'resource']],
    ]);
    expect(remainder.map(({ what }) => what)).toContain('Provenance');
  });

  it('keeps a statement that the rules refuse as a note, with the rule', () => {
    const { value, issues, remainder } = fromBundle(
      damage((resource) =>
        Object.assign(resource.valueQuantity as object, { code: 's', unit: 's' }),
      ),
    );
    expect(value?.statements[0]).toMatchObject({ key: 'm', kind: 'note' });
    expect(issues).toMatchObject([
      { code: 'wrong-unit', severity: 'error', path: ['entry', 6, 'resource'] },
    ]);
    expect(remainder.map(({ what }) => what)).toContain('Observation.bodySite.coding');
  });

  it('does not take a statement that was withdrawn by itself', () => {
    const { value, remainder } = fromBundle(
      damage((resource) => Object.assign(resource, { status: 'entered-in-error' })),
    );
    expect(value?.statements.map(({ key }) => key)).toEqual(['n']);
    expect(remainder.map(({ what }) => what)).toContain(
      'Observation: its status says that it was withdrawn or not made',
    );
  });
});
