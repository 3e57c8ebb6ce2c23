import { find } from '../../find/find.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { issue } from '../issue.ts';
import type { WordTable } from '../mapping/mapping.ts';
import type { Target } from '../mapping/target.ts';
import { ambiguousWords, guessWords } from './guess/guess-words.ts';
import { answersOf, type SampleField } from './guess/sample.ts';
import { nameParts } from './names/name-parts.ts';
import { placeName } from './names/place-name.ts';
import type { Naming } from './names/side-and-unit.ts';
import { noteWords, phraseKeys, placeIn } from './names/use-words.ts';
import type { Proposal, ProposalQuestion } from './proposal.ts';

const noteKeys = phraseKeys(noteWords);

/** A field that has no other use: a column of free text, or what its name says. */
export function fieldProposal(
  field: SampleField,
  label: string,
  naming: Naming,
  open: Issue[],
): Proposal {
  const { name } = field;
  if (placeIn(noteKeys, label, naming.index.respell) >= 0) {
    const reasons = [{ reason: 'usual-name' }] as const;
    const target: Target = { kind: 'note' };
    return { name, of: 'field', target, score: 0.9, reasons, questions: [], offers: [] };
  }
  return proposalOf('field', name, label, field, naming, open);
}

/** What a field or item is by its name, with the meanings of its answers. */
export function proposalOf(
  of: Proposal['of'],
  name: string,
  label: string,
  field: SampleField,
  naming: Naming,
  open: Issue[],
): Proposal {
  const placement = placeName(name === label ? [name] : [name, label], field.words, naming);
  const { target, questions } = placement;
  if (target === undefined) {
    const offers = offersFor(label, naming, questions);
    open.push(unplaced(name, of, offers));
    return { name, of, ...placement, offers };
  }
  const { target: worded, unread } = withWords(target, field, naming.catalogue, open);
  return {
    name,
    of,
    ...placement,
    target: worded,
    questions: unread === 0 ? questions : [...questions, { question: 'answers', count: unread }],
    offers: [],
  };
}

/** Most names that are offered for one that has no place. */
const MOST_OFFERS = 4;

/** Codes that the name means alike, or else those that are nearest, for a person to choose from. */
function offersFor(
  name: string,
  { catalogue, pairs }: Naming,
  questions: readonly ProposalQuestion[],
): readonly string[] {
  for (const question of questions) if ('codes' in question) return question.codes;
  const words = nameParts(name, pairs).about.filter((word) => word.length > 1);
  const found = find(words.join(' '), { catalogue, limit: MOST_OFFERS });
  return found.map(({ kind, code }) => `${kind}/${code}`);
}

function withWords(
  target: Target,
  field: SampleField,
  catalogue: Catalogue,
  open: Issue[],
): { readonly target: Target; readonly unread: number } {
  if (!('words' in target)) return { target, unread: 0 };
  const answers = answersOf(field);
  if (answers === undefined) {
    open.push(issue('unknown-word', [field.name], { reason: 'many-answers' }));
    return { target, unread: field.words.length };
  }
  const words: WordTable = guessWords(answers, target, catalogue);
  let unread = 0;
  for (const [word, meaning] of Object.entries(words)) {
    if (meaning !== 'text') continue;
    unread += 1;
    const readings = ambiguousWords.get(word.toLowerCase());
    const facts =
      readings === undefined
        ? ({ reason: 'open' } as const)
        : ({ reason: 'several-readings', codes: [readings] } as const);
    open.push(issue('unknown-word', [field.name, word], facts, { severity: 'warning' }));
  }
  return { target: { ...target, words }, unread };
}

function unplaced(name: string, of: Proposal['of'], offers: readonly string[]): Issue {
  const reason = of === 'field' ? 'nothing-near-field' : 'nothing-near-item';
  const codes = offers.map((offer) => offer.replace(/^[a-z]+\//, ''));
  return issue('unmapped-field', [name], { reason, codes }, { severity: 'warning' });
}
