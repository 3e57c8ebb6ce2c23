/** Codes that only a terminology server knows, asked of one. */
export type {
  CodeAnswer,
  CodeQuestion,
  Expansion,
  Fetch,
  Terminology,
  TerminologyOptions,
} from './client.ts';
export { createTerminology } from './client.ts';
export { withTerminology } from './with-terminology.ts';
