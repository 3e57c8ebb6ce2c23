import { describe, expect, it } from 'vitest';
import type { Proposal } from '../../../src/convert/proposals/proposal.ts';
import { proposeFindings } from '../../../src/convert/proposals/propose.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { examOf } from './exam-of.ts';
import { sentences } from './sentences.ts';

const proposalsOf = (...texts: readonly string[]): readonly Proposal[] =>
  orThrow('propose', proposeFindings(examOf(...texts)));

const shown = ({ statement, open }: Proposal): string => {
  const { finding = '?', side = '?', presence = '?' } = statement;
  expect(open.includes('presence')).toBe(presence === '?');
  return [finding.replace(/^.*\./, ''), side, presence].join(' ');
};

describe('a sentence is proposed as it says, and no more', () => {
  it('for at least forty sentences with a side or a denial', () => {
    expect(sentences.length).toBeGreaterThan(80);
  });

  it.each(sentences)('%s', (text, ...expected) => {
    expect(proposalsOf(text).map(shown)).toEqual(expected);
  });

  it('all of them as one text, each with its place in it', () => {
    const text = sentences.map(([sentence]) => sentence).join(' ');
    for (const proposal of proposalsOf(text)) {
      expect(text.slice(proposal.start, proposal.end)).toBe(proposal.text);
    }
  });
});

describe('a denial is not cut off', () => {
  it.each([
    ['by a line that is broken by its width', 'There is on both lids of this worker no\nptosis.'],
    ['before what the next line names', 'Kein\nEktropium.'],
    ['by a table cell', 'Ptosis | no | no'],
    ['by a line of its own', 'Ptosis\nnone'],
    ['by a heading of its own', 'Ptosis:\nnone'],
    ['by a blank line', 'Ptosis\n\nNone'],
  ])('%s', (_, text) => {
    expect(proposalsOf(text).map(({ statement }) => statement.presence)).not.toContain('present');
  });
});

describe('what stands above a sentence', () => {
  it('says where, and on which side', () => {
    expect(proposalsOf('Right eye: ptosis 2 mm. No ectropion.').map(shown)).toEqual([
      'ptosis right present',
      'ectropion right absent',
    ]);
    expect(proposalsOf('re. Auge: Ptosis. li. Auge: unauffällig.').map(shown)).toEqual([
      'ptosis right present',
    ]);
  });

  it.each(['History', 'Family history', 'Plan', 'Anamnese', 'Heart', 'Unlisted thing'])(
    'leaves open whether it is there below "%s"',
    (heading) => {
      expect(proposalsOf(`${heading}: right ptosis.`).map(shown)).toEqual(['ptosis ? ?']);
    },
  );
});
