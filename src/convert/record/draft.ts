import type { Issue } from '../../issues/issue.ts';
import type { ExamCondition } from '../../model/exam.ts';
import type { Code, Side } from '../../model/primitive.ts';
import type { AttributeOf, Unkeyed } from '../build/built.ts';
import type { Field } from './record.ts';

/** A piece of an exam on its way, with the fields that it came from. */
export interface Draft {
  readonly content: DraftContent;
  /** Fields that the content states. */
  readonly fields: readonly Field[];
  /** Fields whose text stands in the note of the content. */
  readonly told: readonly Field[];
  /** Makes the same as a note, for when it cannot stand as it is; most can, and it is never asked for. */
  readonly fallback: () => TextDraft;
  /** Which of several things of its kind at its place this is about. */
  readonly group?: string;
}

export type DraftContent =
  | { readonly statement: Unkeyed }
  | { readonly attribute: AttributeOf }
  | { readonly condition: ExamCondition };

/** Text that is kept as a note. */
export interface TextDraft {
  readonly text: string;
  readonly fields: readonly Field[];
  /** Name of the field or item, for the key. */
  readonly name: string;
  readonly region?: Code;
  readonly side?: Side;
}

/** What came of one record: pieces in order, and what is to be said about them. */
export interface Drafts {
  readonly drafts: (Draft | TextDraft)[];
  readonly issues: Issue[];
}

export function isText(draft: Draft | TextDraft): draft is TextDraft {
  return 'text' in draft;
}
