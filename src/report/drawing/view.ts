/**
 * A view of the body in a field of `width` by `height`. What has two sides is drawn for the left of
 * the patient and mirrored for the right: within one view from the front, in which the right side lies
 * on the left as the examiner sees it, and as a view of its own from the side.
 */
export interface View {
  readonly id: ViewName;
  readonly from: 'front' | 'side';
  readonly width: number;
  readonly height: number;
  /** Units of the field that stand for a millimetre of an adult, where sizes are drawn to scale. */
  readonly scale?: number;
  readonly lines: readonly Line[];
  readonly areas: readonly Area[];
}

export type ViewName = 'front' | 'profile' | 'deep' | 'neck' | 'eye' | 'ear' | 'nose';

/** A path, and how it is drawn: filled skin, a contour, a fine line of shape, what lies below the skin. */
export interface Line {
  readonly d: string;
  readonly as: 'skin' | 'contour' | 'fine' | 'deep' | 'hair' | 'dark';
  /** Drawn for the other side too; for views from the front, whose midline is at half the width. */
  readonly both?: true;
}

/** Where a region lies in a view: an ellipse, turned by some degrees. */
export interface Area {
  readonly region: string;
  readonly x: number;
  readonly y: number;
  readonly rx: number;
  readonly ry: number;
  readonly turn?: number;
}
