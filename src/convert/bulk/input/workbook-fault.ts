import type { WorkbookReason } from './zip-directory.ts';

/** Reasons that need no further fact. */
export type PlainReason = Exclude<WorkbookReason, 'several-sheets'>;

/** The archive holds no workbook that is read. */
export class WorkbookFault extends Error {
  readonly reason: PlainReason;

  constructor(reason: PlainReason) {
    super(reason);
    this.reason = reason;
  }
}
