import type { StatementConversion } from '../facets/conversion.ts';
import type { Image } from './statement.ts';

/** No field or item can mean a picture; its key would start with its region. */
export const imageConversion: StatementConversion<Image> = { about: ({ region }) => [region] };
