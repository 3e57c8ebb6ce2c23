import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { AddedCode, Place } from '../../model/builder/place.ts';
import type { Key } from '../../model/primitive.ts';
import type { AttributeCode, FindingCode } from '../../terminology/tables/code-types.ts';
import type { Attribute, Finding } from './statement.ts';

type FindingDetails = Details<Finding> & {
  readonly tracking?: Key;
  readonly certainty?: 'suspected' | 'confirmed';
  /** Several values of one attribute stand in a list. */
  readonly attributes?: Readonly<
    Partial<Record<AttributeCode, Attribute['value'] | readonly Attribute['value'][]>>
  >;
};

/**
 * Adds a sign that was found.
 *
 * @param draft The draft so far.
 * @param finding Code of the sign, from the table `findings` or marked as {@link added}.
 * @param place The region, and its side where it is paired (always the patient's own).
 * @param details Attributes of the sign, certainty, methods, examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = present(draft, 'naevus', { region: 'temple', side: 'right' }, { note: 'As last year' });
 */
export function present(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  { attributes, ...details }: FindingDetails = {},
): ExamDraft {
  const listed = Object.entries(attributes ?? {}).flatMap(([attribute, given]) =>
    [given].flat().map((value) => ({ attribute, value })),
  );
  return state(draft, {
    kind: 'finding',
    finding,
    presence: 'present',
    ...place,
    ...details,
    ...(listed.length > 0 && { attributes: listed }),
  });
}

/**
 * Adds a sign that was looked for and not found.
 *
 * @param draft The draft so far.
 * @param finding Code of the sign, from the table `findings` or marked as {@link added}.
 * @param place The region, and its side where it is paired. A group of regions stands for all its
 *   members but those in `except`.
 * @param details Exceptions, methods, examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = absent(draft, 'naevus', { region: 'temple', side: 'both' });
 */
export function absent(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  details: Details<Finding> & Pick<Finding, 'except' | 'tracking'> = {},
): ExamDraft {
  return state(draft, { kind: 'finding', finding, presence: 'absent', ...place, ...details });
}

/**
 * Adds a sign that was looked for and could not be decided.
 *
 * @param draft The draft so far.
 * @param finding Code of the sign, from the table `findings` or marked as {@link added}.
 * @param place The region, and its side where it is paired.
 * @param details Methods, examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = indeterminate(draft, 'naevus', { region: 'temple', side: 'left' });
 */
export function indeterminate(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  details: Details<Finding> = {},
): ExamDraft {
  return state(draft, {
    kind: 'finding',
    finding,
    presence: 'indeterminate',
    ...place,
    ...details,
  });
}
