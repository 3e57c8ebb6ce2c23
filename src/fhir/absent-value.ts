import { ABSENT_EXTENSION } from './names/systems.ts';

/** In place of a value that must or should stand, and is not known. */
export const absentValue = {
  extension: [{ url: ABSENT_EXTENSION, valueCode: 'unknown' }],
} as const;
