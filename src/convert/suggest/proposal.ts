import type { PhraseUse } from '../../find/phrases.ts';
import type { Side, UnitCode } from '../../model/primitive.ts';
import type { Target } from '../mapping/target.ts';
import type { HeadUse, ItemUse } from './names/use-words.ts';

/** Why a proposal is made. */
export type ProposalReason =
  /** The name, or a part of it, is this display, synonym, abbreviation or code. */
  | { readonly reason: 'word'; readonly word: string; readonly use: PhraseUse; readonly of: string }
  /** A word of the name was taken for another. */
  | { readonly reason: 'respelt'; readonly word: string; readonly as: string }
  | { readonly reason: 'side'; readonly word: string; readonly side: Side }
  | { readonly reason: 'unit'; readonly word: string; readonly unit: UnitCode }
  /** Of several that the name can mean, the one that the values can be of. */
  | { readonly reason: 'values'; readonly values: 'numbers' | 'words' }
  /** What the standard of the syntax, or the usual name of such a field, says. */
  | { readonly reason: 'standard' | 'usual-name' };

/** What a person has to say before a proposal can be used; nothing of it is guessed. */
export type ProposalQuestion =
  | { readonly question: 'side' | 'two-sides' | 'unit' | 'region' | 'not-a-side' | 'wrong-unit' }
  | { readonly question: 'lone-side' | 'negation'; readonly word: string }
  /** Rows that the name means alike. */
  | { readonly question: 'which'; readonly codes: readonly string[] }
  | { readonly question: 'day-or-month'; readonly forms: readonly string[] }
  /** Answers whose meaning is not plain. */
  | { readonly question: 'answers'; readonly count: number };

/** What a field or item could be, for a person to confirm or change. */
export interface Proposal {
  /** Name of the field, or code of the item. */
  readonly name: string;
  readonly of: 'field' | 'item';
  /** What it is of the exam, the person or the record. */
  readonly head?: HeadUse;
  /** What it is of a record that says in one field what another means. */
  readonly role?: ItemUse;
  readonly target?: Target;
  /** From 0 to 1: how near the name is to what it was taken for. 0 where nothing is proposed. */
  readonly score: number;
  readonly reasons: readonly ProposalReason[];
  readonly questions: readonly ProposalQuestion[];
  /** Codes that are near, where nothing is proposed: `sign/naevus`. */
  readonly offers: readonly string[];
}
