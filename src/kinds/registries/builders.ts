/** The builder functions, each from the folder of the kind that it states. */

export type { ReasonGiven } from '../../model/builder/reason.ts';
export { absent, indeterminate, present } from '../finding/build.ts';
export { tested } from '../function-test/build.ts';
export { pictured } from '../image/build.ts';
export { measured, unusable } from '../measurement/build.ts';
export { moved } from '../movement/build.ts';
export { noted } from '../note/build.ts';
export {
  abnormal,
  normal,
  notApplicable,
  notExamined,
  partlyExamined,
} from '../region-state/build.ts';
export { scored } from '../scale-score/build.ts';
export { sensation } from '../sensation/build.ts';
export { comparedSides } from '../sensation-comparison/build.ts';
export { symptom } from '../symptom/build.ts';
