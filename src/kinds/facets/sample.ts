import type { Exam } from '../../model/exam.ts';
import type { Statement } from '../../model/statement.ts';
import type { Item, ItemValue } from '../../testing/formats/item.ts';
import { stateWord } from '../../testing/formats/item.ts';
import { keptBack } from '../../testing/formats/kept-back.ts';
import type { Arriving } from '../../testing/formats/losses/loss-work.ts';
import type { Sampling, Stated } from '../../testing/sample/sampling.ts';
import type { Reason, StatementBase } from './base.ts';

/** Where in a sample exam statements of a kind come from. */
export type Drawn =
  | {
      /** Drawn from the tables alone. All kinds choose their rows first, and then state them in turn. */
      readonly examined?: (sampling: Sampling) => () => Stated[];
      /** Drawn when what can be referred to is there. */
      readonly referring?: (sampling: Sampling, statements: readonly Statement[]) => Stated[];
    }
  /** Another kind draws it along with its own: findings with the state of their region. */
  | { readonly drawnWith: Statement['kind'] };

export type Arrives<S extends StatementBase> =
  // Typed as a method, so that the record can hold one for each kind.
  { read(statement: S, exam: Exam, work: Arriving): S }['read'] | { readonly lost: string };

/** What sample exams and legacy exports ask of a kind: facet `sample.ts`, listed in `samples.ts`. */
export interface KindSample<S extends StatementBase> {
  readonly drawn: Drawn;
  /** Its lines in a legacy export; none where no item can say it. `groups`: number of a finding by key. */
  items(statement: S, groups: ReadonlyMap<string, string>): Item[];
  /** What is left of it when such lines are read again, or the loss by which nothing is. */
  readonly arrives: Arrives<S>;
}

/** A result by its code, or that there is none and why. */
export function answer(result: string, reason: Reason | undefined): ItemValue {
  return { word: reason === undefined ? result : stateWord('not-tested', reason.code) };
}

/** A statement of which any method that the format has no room for is left out. */
export function methodsOf<S extends { readonly methods?: readonly string[] }>(
  statement: S,
  work: Arriving,
): S {
  const { methods } = statement;
  return methods === undefined ? statement : { ...statement, methods: work.oneOf(methods) };
}

/** A statement whose reason has lost its words. */
export function withReason<S extends { readonly reason?: Reason }>(
  statement: S,
  work: Arriving,
): S {
  const { reason } = statement;
  return reason === undefined
    ? statement
    : { ...statement, reason: work.without('reason', reason) };
}

/** What was not tested arrives by its reason alone, also where the patient was unable. */
export function untested(result: string, work: Arriving): string {
  if (result !== 'not-tested') work.lost('unable');
  return 'not-tested';
}

/** A reference arrives where it is to a finding that is present and arrives, which has a group. */
export function aboutFinding<S extends { readonly about?: string }>(
  statement: S,
  exam: Exam,
  work: Arriving,
): S {
  const { about } = statement;
  if (about === undefined) return statement;
  const owner = exam.statements.find(({ key }) => key === about);
  if (
    owner !== undefined &&
    'presence' in owner &&
    owner.presence === 'present' &&
    keptBack(owner) === undefined
  )
    return statement;
  work.lost('about');
  const { about: _gone, ...rest } = statement;
  return rest as S; // S without an optional property
}
