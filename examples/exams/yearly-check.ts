/**
 * The yearly check of a crane operator of the port, with everything stated: what is usual, what was
 * found, what was looked for and not found, what could not be seen or was left out, and why. The
 * parts stand in the folder yearly-check, in the order of the exam.
 */
import { conclude, type Exam, finishExamOrThrow } from '../../src/index.ts';
import { complaints } from './yearly-check/complaints.ts';
import { conclusion } from './yearly-check/conclusion.ts';
import { ears } from './yearly-check/ears.ts';
import { eyes } from './yearly-check/eyes.ts';
import { jaw } from './yearly-check/jaw.ts';
import { neck } from './yearly-check/neck.ts';
import { nerves } from './yearly-check/nerves.ts';
import { nose } from './yearly-check/nose.ts';
import { atRest, skin } from './yearly-check/skin.ts';
import { start } from './yearly-check/start.ts';

const parts = [complaints, atRest, skin, eyes, nose, ears, nerves, jaw, neck];

const examined = parts.reduce((draft, part) => part(draft), start);

export const exam: Exam = finishExamOrThrow(conclude(examined, conclusion), 'final');
