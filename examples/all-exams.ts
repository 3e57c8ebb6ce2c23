import type { Exam } from '../src/index.ts';
import { exam as brokenOff } from './exams/broken-off.ts';
import { exam as droopingLid } from './exams/drooping-lid.ts';
import { exam as facialNumbness } from './exams/facial-numbness.ts';
import { exam as neckLump } from './exams/neck-lump.ts';
import { exam as skinLesion } from './exams/skin-lesion.ts';
import { exam as yearlyCheck } from './exams/yearly-check.ts';

/** Every example exam by the name of its file. */
export const examples: ReadonlyMap<string, Exam> = new Map([
  ['yearly-check', yearlyCheck],
  ['skin-lesion', skinLesion],
  ['facial-numbness', facialNumbness],
  ['drooping-lid', droopingLid],
  ['neck-lump', neckLump],
  ['broken-off', brokenOff],
]);
