import type { Target } from '../mapping/target.ts';
import type { HeadUse, ItemUse } from './names/use-words.ts';
import type { Proposal, ProposalQuestion, ProposalReason } from './proposal.ts';

/**
 * Says in words what a proposal takes a field for.
 *
 * @param proposal A proposal of `suggestMapping` or `scanExport`.
 * @returns One line in English, such as `measurement mrd1 right mm`; empty where nothing is proposed.
 * @example
 * const meanings = suggestMapping(text).proposals.map(meaningText);
 */
export function meaningText({ target, head, role }: Proposal): string {
  if (head !== undefined) return headTexts[head];
  if (role !== undefined) return roleTexts[role];
  return target === undefined ? '' : targetText(target);
}

/** A target by its kind and the codes that it names. */
export function targetText(target: Target): string {
  const { kind, words: _words, ...codes } = { words: undefined, ...target };
  const named = Object.values(codes).filter((code) => typeof code === 'string');
  return [kind, ...named].join(' ');
}

const headTexts: { readonly [Use in HeadUse]: string } = {
  exam: 'number of the exam',
  status: 'status of the exam',
  subject: 'number of the person',
  family: 'family name',
  given: 'given name',
  born: 'date of birth',
  gender: 'sex',
  performed: 'when the exam was done',
  recorded: 'when the record was written',
  examiner: 'who examined',
};

const roleTexts: { readonly [Use in ItemUse]: string } = {
  code: 'which item a row is',
  value: 'value of the item',
  side: 'side of the item',
  unit: 'unit of the item',
  method: 'method of the item',
  note: 'note on the item',
};

/**
 * Says in a few words why something is proposed.
 *
 * @param reason One of the reasons of a proposal.
 * @returns One line in English.
 * @example
 * const reasons = suggestMapping(text).proposals.flatMap((one) => one.reasons.map(reasonText));
 */
export function reasonText(reason: ProposalReason): string {
  switch (reason.reason) {
    case 'word':
      return `"${reason.word}" is a ${reason.use} of ${reason.of}`;
    case 'respelt':
      return `"${reason.word}" was taken for "${reason.as}"`;
    case 'side':
      return `"${reason.word}" is a side: ${reason.side}`;
    case 'unit':
      return `"${reason.word}" is a unit: ${reason.unit}`;
    case 'values':
      return `its values are ${reason.values}`;
    case 'standard':
      return 'the standard of the syntax says so';
    case 'usual-name':
      return 'a usual name of such a field';
  }
}

/**
 * Says what a person has to answer before a proposal can be used.
 *
 * @param question One of the questions of a proposal.
 * @returns One line in English.
 * @example
 * const open = suggestMapping(text).proposals.flatMap((one) => one.questions.map(questionText));
 */
export function questionText(question: ProposalQuestion): string {
  switch (question.question) {
    case 'side':
      return 'which side?';
    case 'two-sides':
      return 'its name has words of two sides: which holds?';
    case 'unit':
      return 'which unit?';
    case 'region':
      return 'which region?';
    case 'not-a-side':
      return 'its name has a side that this cannot have: what is meant?';
    case 'wrong-unit':
      return 'its name has a unit that this cannot have: what is meant?';
    case 'lone-side':
      return `is "${question.word}" a side?`;
    case 'negation':
      return `does "${question.word}" deny it?`;
    case 'which':
      return `which of ${question.codes.join(', ')}?`;
    case 'day-or-month':
      return `which form have its dates: ${question.forms.join(' or ')}?`;
    case 'answers':
      return `what do ${question.count} of its answers mean?`;
  }
}
