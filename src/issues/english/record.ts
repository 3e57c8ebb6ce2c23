import { recordForm } from './record-form.ts';
import { recordMeaning } from './record-meaning.ts';
import { recordReading } from './record-reading.ts';

/** Sentences about exams, bundles and the data that they are made of. By code and reason. */
export const record = { ...recordForm, ...recordMeaning, ...recordReading } as const;
