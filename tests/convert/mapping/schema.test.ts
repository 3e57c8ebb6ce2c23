import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { presetNames } from '../../../src/convert/mapping/presets/index.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { mappingSchemaIssues } from '../../../src/convert/prepare/schema-issues.ts';
import { csvMapping } from '../csv/suite.ts';
import { mergePatch } from '../merge-patch.ts';

const file = join(import.meta.dirname, '../../../profiles/mapping.schema.json');
const text = readFileSync(file, 'utf8');

describe('the compiled schema', () => {
  const ajv = new Ajv({ discriminator: true, allowUnionTypes: true, strict: false });
  const accepts = ajv.compile(JSON.parse(text));

  it('accepts what ajv accepts by the published one', () => {
    expect(accepts(csvMapping)).toBe(true);
    expect(mappingSchemaIssues(csvMapping)).toEqual([]);
  });

  it.each([
    ['format', { format: 'face-neck-mapping/2' }, ['format'], 'invalid-value'],
    ['an unknown property', { colour: 1 }, ['colour'], 'unknown-property'],
    [
      'an unknown kind',
      { fields: { x: { kind: 'smell' } } },
      ['fields', 'x', 'kind'],
      'unknown-code',
    ],
    [
      'a missing part',
      { fields: { MRD1_R: { measure: null } } },
      ['fields', 'MRD1_R', 'measure'],
      'missing-property',
    ],
    [
      'a number for a code',
      { fields: { MRD1_R: { measure: 4 } } },
      ['fields', 'MRD1_R', 'measure'],
      'wrong-type',
    ],
    ['an unknown syntax', { source: { syntax: 'dbf' } }, ['source', 'syntax'], 'unknown-code'],
    [
      'a delimiter that is none',
      { source: { delimiter: 'x' } },
      ['source', 'delimiter'],
      'unknown-code',
    ],
    [
      'a state without its reason',
      { noValue: { 'N/E': { state: 'not-examined' } } },
      ['noValue', 'N/E', 'reason'],
      'missing-property',
    ],
    ['a side that is none', { sides: { R: 'starboard' } }, ['sides', 'R'], 'unknown-code'],
    ['no exam', { exam: null }, ['exam'], 'missing-property'],
  ])('tells %s as one issue', (_, patch, path, code) => {
    const mapping = mergePatch(csvMapping, patch);
    expect(accepts(mapping)).toBe(false);
    expect(mappingSchemaIssues(mapping)).toMatchObject([{ code, path }]);
  });

  it.each(presetNames)(
    'lets a mapping that uses the preset %s leave open what that says',
    (use) => {
      const format = 'face-neck-mapping/1';
      const exam = { subject: { identifiers: [{ from: 'n', system: 'urn:oid:1.2.3' }] } };
      expect(accepts({ format, use })).toBe(true);
      expect(accepts({ format, use, exam, dates: { zone: 'Z' } })).toBe(true);
      expect(accepts({ format, use: `${use}-2` })).toBe(false);
      expect(accepts({ format, use, exam: { colour: 1 } })).toBe(false);
      expect(prepareMapping({ format, use, exam }).issues).toEqual([]);
      expect(mappingSchemaIssues({ format, use })).not.toEqual([]);
    },
  );

  it('refuses what could change prototypes', () => {
    const mapping = JSON.parse(`{"__proto__": {"format": "face-neck-mapping/1"}}`);
    expect(mappingSchemaIssues(mapping)[0]).toMatchObject({ code: 'unsafe-property' });
  });
});
