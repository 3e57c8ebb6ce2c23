import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/index.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { AttributeTarget } from '../../../src/convert/mapping/target.ts';
import { isWithin } from '../../../src/model/rules/places.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { lateralitySides } from '../../../src/terminology/sides.ts';
import { oneRow } from './one-row.ts';

const { attributes, findings, regions } = builtInCatalogue;

/** A sign of the family, at a region where it can be, on the left where that has sides. */
function ownerOf(family: string): { finding: string; region: string; side?: 'left' } {
  const sign = [...findings.values()].find(({ attributes: own }) => own === family);
  const within = sign?.regions ?? [];
  const place = [...regions.values()].find(
    ({ code, group }) =>
      !group &&
      (within.length === 0 || within.some((above) => isWithin(code, above, builtInCatalogue))),
  );
  if (sign === undefined || place === undefined) throw new Error(`no sign with ${family}`);
  const isSided = lateralitySides[place.laterality].sides.includes('left');
  return { finding: sign.code, region: place.code, ...(isSided && { side: 'left' }) };
}

/** What an attribute of a sign becomes out of one word. */
function converted(
  attribute: string,
  word: string,
): { value: unknown; texts: string[]; codes: string[] } {
  const row = attributes.get(attribute);
  const owner = ownerOf(row?.family ?? '');
  const codes =
    row?.type === 'boolean' ? ['yes', 'no'] : (row?.values ?? []).map((one) => one.code);
  const target: AttributeTarget = {
    ...owner,
    kind: 'attribute',
    attribute,
    ...(codes.length > 0 && {
      words: Object.fromEntries(codes.map((code) => [`w ${code}`, code])),
    }),
    ...(row?.type === 'quantity' && { unit: row.unit ?? 'mm' }),
  };
  const mapping: Mapping = {
    ...oneRow,
    source: { syntax: 'csv', delimiter: ';' },
    fields: { sign: { ...owner, kind: 'finding', words: { there: 'present' } }, said: target },
  };
  const { exams, issues, quarantine } = fromCsv(
    `id;day;sign;said\n1;20240205;there;${word}\n`,
    mapping,
  );
  const statements = exams.flatMap(({ exam }) => exam.statements);
  expect([...issues.filter(({ severity }) => severity === 'error'), ...quarantine]).toEqual([]);
  const owners = statements.filter(({ kind }) => kind === 'finding');
  expect(owners).toHaveLength(1);
  return {
    value: owners.flatMap((one) => ('attributes' in one ? (one.attributes ?? []) : []))[0]?.value,
    texts: statements.flatMap((one) => (one.kind === 'note' ? [one.text] : [])),
    codes: exams.flatMap((one) => one.issues.map(({ code }) => code)),
  };
}

const rows = [...attributes.values()].map(({ code, type, values = [] }) => ({
  code,
  type,
  values: values.map((one) => one.code),
}));
const coded = rows.filter(({ type }) => type === 'code' || type === 'boolean');
const measured = rows.filter(({ type }) => type === 'quantity');

// The rows of terminology/attributes.json are what a word can mean; there is no source beside them.
describe('attributes of a sign', () => {
  it.each(coded)('$code: each word is the value that the mapping says, and no other', (row) => {
    const values = row.type === 'boolean' ? ['yes', 'no'] : row.values;
    for (const value of values) {
      const meant = row.type === 'boolean' ? value === 'yes' : value;
      expect(converted(row.code, `w ${value}`)).toEqual({ value: meant, texts: [], codes: [] });
    }
  });

  it.each(coded)('$code: a word without a meaning is kept as text', ({ code }) => {
    const { value, texts, codes } = converted(code, 'briny');
    expect(value).toBeUndefined();
    expect(texts).toEqual([expect.stringContaining('briny')]);
    expect(codes).toEqual(['unknown-word']);
  });

  it.each(measured)(
    '$code: a figure has the unit of its field, and nothing else is one',
    ({ code }) => {
      const unit = attributes.get(code)?.unit;
      for (const value of ['5', '4.5']) {
        expect(converted(code, value)).toEqual({ value: { value, unit }, texts: [], codes: [] });
      }
      for (const word of ['five', '3-4', '']) {
        const { value, texts } = converted(code, word);
        expect(value, word).toBeUndefined();
        expect(texts, word).toEqual(word === '' ? [] : [expect.stringContaining(word)]);
      }
    },
  );
});
