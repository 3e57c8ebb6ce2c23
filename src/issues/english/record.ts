import { recordForm } from './record-form.ts';
import { recordMeaning } from './record-meaning.ts';

/** Sentences about exams, bundles and the data that they are made of. By code and reason. */
export const record = { ...recordForm, ...recordMeaning } as const;
