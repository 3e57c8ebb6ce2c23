import type {
  ProposalPart,
  ProposalReasons,
  ProposedFinding,
} from '../../convert/proposals/proposal.ts';

/** The words of the page on which proposals are confirmed, in one language. In braces stands what is counted or named. */
export interface ProposalReviewWords {
  readonly title: string;
  readonly intro: string;
  readonly patientData: string;
  readonly needsScript: string;
  /** Of proposals that wait for a page after this one: {count}. */
  readonly left: string;
  /** Of decisions from an earlier page: {count}. */
  readonly earlier: string;
  readonly nothing: string;
  readonly exam: string;
  readonly wholeNote: string;
  readonly below: string;
  readonly parts: Readonly<Record<ProposalPart, string>>;
  readonly presence: Readonly<Record<NonNullable<ProposedFinding['presence']>, string>>;
  /** In place of a part that is to be decided. */
  readonly open: string;
  readonly noSide: string;
  readonly readIn: Readonly<Record<NonNullable<ProposalReasons['region']>, string>>;
  readonly unread: Readonly<Record<NonNullable<ProposalReasons['unread']>, string>>;
  readonly canMean: string;
  readonly choices: Readonly<Record<'confirm' | 'change' | 'reject', string>>;
  readonly takeBack: string;
  readonly name: string;
  readonly nextOpen: string;
  readonly save: string;
  /** What the script of the page tells. */
  readonly told: Readonly<
    Record<
      | 'notChosen'
      | 'count'
      | 'nameMissing'
      | 'nothingDecided'
      | 'unanswered'
      | 'opposite'
      | 'saved'
      | 'allDecided',
      string
    >
  >;
}
