import { describe, expect, it } from 'vitest';
import { confirmFindings } from '../../../src/convert/proposals/apply.ts';
import type { Proposal } from '../../../src/convert/proposals/proposal.ts';
import { proposeFindings } from '../../../src/convert/proposals/propose.ts';
import { toBundleOrThrow } from '../../../src/index.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { sampled } from '../../sampled.ts';
import { examOf } from './exam-of.ts';
import { sentences } from './sentences.ts';

const exam = examOf('Right ptosis and no ectropion.', 'No scar of the left temple.');
const proposals = orThrow('propose', proposeFindings(exam));
const confirmed = { by: 'Tom Hawser', at: '2025-09-02T09:00:00+02:00' };

const proposalOf = (finding: string): Proposal => {
  const found = proposals.find(({ statement }) => statement.finding?.endsWith(finding));
  if (found === undefined) throw new Error('not proposed');
  return found;
};

describe('a proposal that nobody has confirmed', () => {
  it.each([...Array(sampled(5, 200)).keys()])(
    'changes no exam, whatever its sentences are (%s)',
    (seed) => {
      const texts = sentences
        .filter((_, at) => (at * 7919 + seed * 104729) % 11 < 3)
        .map(([text]) => text);
      const before = examOf(...texts, texts.join(' '));
      const whole = structuredClone(before);
      const found = orThrow('propose', proposeFindings(before));
      expect(found.length).toBeGreaterThan(0);
      expect(before).toEqual(whole);
      expect(orThrow('confirm', confirmFindings(before, found))).toEqual(whole);
      expect(before.statements.every(({ kind }) => kind === 'note')).toBe(true);
    },
  );

  it('of another exam is not taken, although it is confirmed', () => {
    const other = proposals.map((one) => ({ ...one, exam: 'letter-2', confirmed }));
    expect(orThrow('confirm', confirmFindings(exam, other))).toEqual(exam);
  });
});

describe('a rejected proposal', () => {
  it('changes no exam', () => {
    const rejected = proposals.map((one) => ({ ...one, rejected: confirmed }));
    expect(orThrow('confirm', confirmFindings(exam, rejected))).toEqual(exam);
  });

  it('is refused where it is confirmed too', () => {
    const both = { ...proposalOf('ptosis'), confirmed, rejected: confirmed };
    const { value, issues } = confirmFindings(exam, [both]);
    expect(value).toBeUndefined();
    expect(issues).toMatchObject([{ code: 'contradiction', path: [0, 'rejected'] }]);
  });
});

describe('the reasons of a proposal', () => {
  const reasonsIn = (note: string): unknown =>
    orThrow('propose', proposeFindings(examOf(note))).map(({ reasons }) => {
      const { words, heading, ...rest } = reasons ?? { words: { start: 0, end: 0 } };
      const piece = (place: typeof heading): string => note.slice(place?.start, place?.end);
      return { words: piece(words), ...(heading && { heading: piece(heading) }), ...rest };
    });

  it.each([
    ['Left ptosis.', { words: 'ptosis', region: 'sign', side: 'sentence' }],
    [
      'Right eye: ptosis.',
      { words: 'ptosis', heading: 'Right eye:', region: 'heading', side: 'heading' },
    ],
    ['No naevus of the nose tip.', { words: 'naevus', region: 'sentence' }],
    ['History:\nleft ptosis.', { words: 'ptosis', heading: 'History:', unread: 'elsewhere' }],
    ['Ptosis on the left\n\n- none', { words: 'Ptosis', unread: 'goes-on' }],
    [`${'scar left, '.repeat(40)}ptosis.`, { words: 'ptosis', unread: 'long' }],
  ])('say which words name the sign and where its place was read (%#)', (note, reasons) => {
    expect(reasonsIn(note)).toContainEqual(reasons);
  });
});

describe('a confirmed proposal', () => {
  it('becomes a finding with its sentence, and the history says who confirmed it and when', () => {
    const sure = { ...proposalOf('ptosis'), confirmed };
    const made = orThrow('confirm', confirmFindings(exam, [sure, proposalOf('scar')]));
    expect(made.statements.slice(0, 2)).toEqual(exam.statements);
    expect(made.statements.slice(2)).toEqual([
      {
        key: 'finding:lid-upper:lid-position.ptosis:right',
        kind: 'finding',
        finding: 'lid-position.ptosis',
        region: 'lid-upper',
        side: 'right',
        presence: 'present',
        note: 'Right ptosis and no ectropion.',
      },
    ]);
    expect(made.examiners.map(({ name }) => name?.text)).toEqual(['Nell Berth', 'Tom Hawser']);
    expect(made).toMatchObject({
      status: 'appended',
      history: [
        {
          action: 'append',
          by: 'confirmer-1',
          at: confirmed.at,
          changed: ['finding:lid-upper:lid-position.ptosis:right'],
        },
      ],
    });
    const provenance = (toBundleOrThrow(made).entry ?? []).map(({ resource }) => resource);
    expect(JSON.stringify(provenance)).toContain('2025-09-02T09:00:00+02:00');
  });

  it('takes what the person decided of what was open', () => {
    const open = proposalOf('ectropion');
    expect(open.open).toEqual(['region', 'side']);
    const decided = {
      ...open,
      statement: { ...open.statement, region: 'lid-lower', side: 'both' as const },
      confirmed,
    };
    const made = orThrow('confirm', confirmFindings(exam, [decided]));
    expect(made.statements.at(-1)).toMatchObject({
      finding: 'lid-turn.ectropion',
      region: 'lid-lower',
      side: 'both',
      presence: 'absent',
    });
  });

  it.each<readonly [string, Proposal, string]>([
    ['leaves its region open', { ...proposalOf('ectropion'), confirmed }, 'missing-property'],
    [
      'leaves its side open',
      {
        ...proposalOf('ectropion'),
        statement: {
          kind: 'finding',
          finding: 'lid-turn.ectropion',
          region: 'lid-lower',
          presence: 'absent',
        },
        confirmed,
      },
      'missing-side',
    ],
    [
      'names nobody',
      { ...proposalOf('ptosis'), confirmed: { ...confirmed, by: '' } },
      'missing-property',
    ],
    [
      'is dated to no moment',
      { ...proposalOf('ptosis'), confirmed: { ...confirmed, at: 'yesterday' } },
      'invalid-value',
    ],
    [
      'has another sentence',
      { ...proposalOf('ptosis'), text: 'Left ptosis', confirmed },
      'unresolved-key',
    ],
    [
      'stands at another place',
      { ...proposalOf('ptosis'), start: 1, end: 31, confirmed },
      'unresolved-key',
    ],
    [
      'is of a note that is not there',
      { ...proposalOf('ptosis'), note: 'x', confirmed },
      'unresolved-key',
    ],
  ])('is refused where it %s', (_, proposal, code) => {
    const { value, issues } = confirmFindings(exam, [proposal]);
    expect(value).toBeUndefined();
    expect(issues.map((one) => one.code)).toContain(code);
  });

  it('that says the same as another is one statement with both sentences', () => {
    const twice = examOf('Right ptosis.', 'Ptosis on the right.');
    const both = orThrow('propose', proposeFindings(twice)).map((one) => ({ ...one, confirmed }));
    const made = orThrow('confirm', confirmFindings(twice, both));
    expect(made.statements.slice(2)).toMatchObject([
      { kind: 'finding', side: 'right', note: 'Right ptosis.\nPtosis on the right.' },
    ]);
  });
});
