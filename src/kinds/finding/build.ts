import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { AddedCode, PlaceAt } from '../../model/builder/place.ts';
import type { Key } from '../../model/primitive.ts';
import type {
  AttributeCode,
  AttributeTypes,
  FindingCode,
  FindingTypes,
  RegionCode,
} from '../../terminology/tables/code-types.ts';
import type { Attribute, Finding } from './statement.ts';

/** Where a sign is expected; one of an adopter anywhere. */
type RegionFor<F> =
  | (F extends keyof FindingTypes ? FindingTypes[F]['region'] : RegionCode)
  | AddedCode;

type AttributesOf<F> = F extends keyof FindingTypes
  ? AttributeTypes[FindingTypes[F]['attributes']]
  : Record<AttributeCode | AddedCode, Attribute['value']>;

/** What this sign takes; several values of one attribute stand in a list. */
type AttributesGiven<Values> = [Values] extends [never]
  ? never
  : { readonly [A in keyof Values]?: Values[A] | readonly Values[A][] };

type PresentDetails<F> = Details<Finding> & {
  readonly tracking?: Key;
  readonly certainty?: 'suspected' | 'confirmed';
  readonly attributes?: AttributesGiven<AttributesOf<F>>;
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
export function present<F extends FindingCode | AddedCode, R extends RegionFor<F>>(
  draft: ExamDraft,
  finding: F,
  place: PlaceAt<R>,
  details: PresentDetails<F> = {},
): ExamDraft {
  const { attributes, ...given } = details;
  const listed = Object.entries<unknown>(attributes ?? {}).flatMap(
    ([attribute, values]) =>
      [values].flat().map((value) => ({ attribute, value: value as Attribute['value'] })), // typed above
  );
  return state(draft, {
    kind: 'finding',
    finding,
    presence: 'present',
    ...place,
    ...given,
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
export function absent<F extends FindingCode | AddedCode, R extends RegionFor<F>>(
  draft: ExamDraft,
  finding: F,
  place: PlaceAt<R>,
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
export function indeterminate<F extends FindingCode | AddedCode, R extends RegionFor<F>>(
  draft: ExamDraft,
  finding: F,
  place: PlaceAt<R>,
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
