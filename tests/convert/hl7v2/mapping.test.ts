import { describe, expect, it } from 'vitest';
import { fromHl7v2 } from '../../../src/convert/hl7v2/from-hl7v2.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { issueText } from '../../../src/issues/issue.ts';
import { mergePatch } from '../merge-patch.ts';
import { xmlSuite } from '../xml/suite.ts';
import { hl7v2Suite } from './suite.ts';

const items = hl7v2Suite.mapping.items ?? [];

describe('mappings of HL7 v2', () => {
  it('is accepted as the cases use it', () => {
    expect(prepareMapping(hl7v2Suite.mapping).issues).toEqual([]);
  });

  it.each(['N', 'X', 'D', 'W', 'I', 'O'])('cannot call OBX-11 %s a result (table 0085)', (code) => {
    const status = { from: 'OBX-11', words: { F: 'stated', [code]: 'stated' } };
    const mapping = mergePatch(hl7v2Suite.mapping, { items: [{ ...items[0], status }] });
    expect(prepareMapping(mapping).issues.map(issueText)).toEqual([
      `error  items[0].status.words.${code}  this code is not a result (expected withdrawn, text, or a state with its reason (table 0085)) [contradiction]`,
    ]);
  });

  it('may say otherwise what a status means', () => {
    const status = { from: 'OBX-11', words: { F: 'stated', N: 'text' } };
    const mapping = mergePatch(hl7v2Suite.mapping, { items: [{ ...items[0], status }] });
    expect(prepareMapping(mapping).issues).toEqual([]);
  });

  it('is not taken for another syntax', () => {
    const result = fromHl7v2('', xmlSuite.mapping);
    expect(result.issues.map(issueText)).toEqual([
      'error  source.syntax  the mapping is for another syntax (expected hl7v2) [invalid-value]',
    ]);
    expect(result.exams).toEqual([]);
  });
});
