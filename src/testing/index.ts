export { applyFault, faultIds } from './faults/apply-fault.ts';
export type { Fault } from './faults/fault.ts';
export { type SampleOptions, type SampleSize, sampleExam, sampleExams } from './sample-exam.ts';
