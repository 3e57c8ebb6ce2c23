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

/** A sign that was found. */
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

/** A sign that was looked for and not found; of a group of regions, with the members excepted. */
export function absent(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  details: Details<Finding> & Pick<Finding, 'except' | 'tracking'> = {},
): ExamDraft {
  return state(draft, { kind: 'finding', finding, presence: 'absent', ...place, ...details });
}

/** A sign that was looked for and could not be decided. */
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
