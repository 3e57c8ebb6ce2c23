import type { Code, Key, Quantity } from '../../model/primitive.ts';
import type { Count, Examined } from '../base.ts';
import { atRegion, type Meaning } from '../meaning.ts';

/** A sign that was looked for: found, not found (a pertinent negative), or not to be decided. */
export interface Finding extends Examined {
  readonly kind: 'finding';
  /** Code of terminology/findings.json. */
  readonly finding: Code;
  readonly presence: Presence;
  /**
   * How sure the examiner is of a finding that is present. Unsaid means as stated.
   * A suspected disease is exported as suspected, never as present.
   */
  readonly certainty?: 'suspected' | 'confirmed';
  /**
   * Attributes of a finding that is present.
   * @minItems 1
   */
  readonly attributes?: readonly Attribute[];
  /** Identity of the lesion, node or lump over exams: the same value next year means the same thing. */
  readonly tracking?: Key;
}

export type Presence = 'present' | 'absent' | 'indeterminate';

export interface Attribute {
  /** Code of terminology/attributes.json. */
  readonly attribute: Code;
  /** A code of the attribute's own list, yes or no, a count, or a quantity, as the attribute asks. */
  readonly value: Code | boolean | Count | Quantity;
}

export const findingMeaning: Meaning<Finding> = {
  subject: ({ finding }) => ({ table: 'findings', code: finding }),
  standing: atRegion,
  said: ({ finding, presence, certainty, methods }) => [
    {
      polarity:
        presence === 'absent'
          ? 'denies'
          : presence === 'indeterminate' || certainty === 'suspected'
            ? 'open'
            : 'states',
      of: { table: 'findings', code: finding },
      methods,
    },
  ],
};
