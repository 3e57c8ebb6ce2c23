import { describe, expect, it } from 'vitest';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { issueText } from '../../../src/issues/issue.ts';
import { mergePatch } from '../merge-patch.ts';
import { cdaSuite } from './suite.ts';

function told(patch: unknown): string[] {
  return prepareMapping(mergePatch(cdaSuite.mapping, patch)).issues.map(issueText);
}

const items = cdaSuite.mapping.items ?? [];

describe('mappings of CDA', () => {
  it('is accepted as the cases use it', () => {
    expect(told({})).toEqual([]);
  });

  it('needs kinds, so that a negated entry never counts as stated', () => {
    const loose = items.map(({ kind, ...rest }, at) => (at === 1 ? rest : { kind, ...rest }));
    expect(told({ items: loose })).toEqual([
      'error  items[1].kind  items of a CDA document need a kind, so that negated entries stay apart (expected observation, negated-observation or another kind of entry) [missing-property]',
    ]);
  });

  it('cannot read a narrative as a code', () => {
    const state = {
      kind: 'region-state',
      region: 'tm',
      side: 'left',
      methods: ['otoscopy'],
      words: 'state',
    };
    const patch = { items: [{ ...items[0], map: { '29545-1': state } }, ...items.slice(1)] };
    expect(told(patch)).toEqual([
      'error  items[0].map.29545-1.kind  a narrative is kept as it stands and never read as a code (expected note) [contradiction]',
    ]);
  });
});
