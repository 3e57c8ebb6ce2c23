export interface Told {
  readonly finding: string;
  readonly region: string;
  readonly side: 'right' | 'left';
}

/** What a shape must come to. `note` and `refused` always with an issue. */
export type Becomes =
  | { readonly presence: 'present' | 'absent' | 'indeterminate'; readonly certainty?: string }
  | 'note'
  | 'refused';

export interface Shape {
  readonly name: string;
  /** Where the shape, or each of its codes, is published. */
  readonly publication: string;
  readonly becomes: Becomes;
  /** The source denies the finding, or does not assert it of this patient. */
  readonly negated?: true;
  /** The side is not in the source. */
  readonly unsided?: true;
  /** Region where the site of the shape names another than that of the finding. */
  readonly region?: string;
  readonly resources: (one: Told) => readonly object[];
}
