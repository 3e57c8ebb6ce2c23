import type { Laterality } from './types.ts';

/** A side in words, always the patient's own. */
export const sideText = {
  right: 'right',
  left: 'left',
  both: 'right and left',
  midline: 'midline',
  'right-of-midline': 'right of the midline',
  'left-of-midline': 'left of the midline',
} as const;

export type SideCode = keyof typeof sideText;

/** Sides that each kind of place can have, and whether one must be said. */
export const lateralitySides: Readonly<
  Record<Laterality, { readonly sides: readonly SideCode[]; readonly required: boolean }>
> = {
  paired: { sides: ['right', 'left', 'both'], required: true },
  crossing: {
    sides: ['midline', 'right', 'left', 'both', 'right-of-midline', 'left-of-midline'],
    required: true,
  },
  midline: { sides: ['midline', 'right-of-midline', 'left-of-midline'], required: false },
  whole: {
    sides: ['right', 'left', 'both', 'midline', 'right-of-midline', 'left-of-midline'],
    required: false,
  },
};

/**
 * SNOMED CT ids that the value set of observation-structureLaterality allows: 7771000 Left,
 * 24028007 Right, 51440002 Right and left, 399488007 Midline (the last is outside the free set).
 */
export const sideSnomed: { readonly [Side in keyof typeof sideText]?: string } = {
  right: '24028007',
  left: '7771000',
  both: '51440002',
  midline: '399488007',
};
