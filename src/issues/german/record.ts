import type { record } from '../english/record.ts';
import type { Translated } from '../language.ts';
import { germanRecordForm } from './record-form.ts';
import { germanRecordMeaning } from './record-meaning.ts';
import { germanRecordReading } from './record-reading.ts';

/** The same sentences as the English ones, in German. */
export const germanRecord: Translated<typeof record> = {
  ...germanRecordForm,
  ...germanRecordMeaning,
  ...germanRecordReading,
};
