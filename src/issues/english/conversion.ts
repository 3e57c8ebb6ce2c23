import { convertedFields } from './converted-fields.ts';
import { convertedFiles } from './converted-files.ts';
import { convertedSources } from './converted-sources.ts';
import { convertedValues } from './converted-values.ts';

/** Sentences about the conversion of older exports. By code and reason. */
export const conversion = {
  ...convertedFiles,
  ...convertedSources,
  ...convertedFields,
  ...convertedValues,
} as const;
