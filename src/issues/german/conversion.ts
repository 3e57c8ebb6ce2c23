import type { conversion } from '../english/conversion.ts';
import type { Translated } from '../language.ts';
import { germanConvertedFields } from './converted-fields.ts';
import { germanConvertedFiles } from './converted-files.ts';
import { germanConvertedSources } from './converted-sources.ts';
import { germanConvertedValues } from './converted-values.ts';

/** The same sentences as the English ones, in German. */
export const germanConversion: Translated<typeof conversion> = {
  ...germanConvertedFiles,
  ...germanConvertedSources,
  ...germanConvertedFields,
  ...germanConvertedValues,
};
