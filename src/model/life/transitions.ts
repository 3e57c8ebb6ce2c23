import type { RecordEvent, RecordStatus } from '../record-event.ts';

/** A step that an existing record can take; `create` is the beginning and no step of a record. */
export type StepAction = Exclude<RecordEvent['action'], 'create'>;

interface Transition {
  readonly action: StepAction;
  readonly from: readonly RecordStatus[];
  /** State after the step; none for one that leaves it as it is. */
  readonly to?: RecordStatus;
}

/** Complete and verified, as it was issued or changed since. */
const issued: readonly RecordStatus[] = ['final', 'amended', 'corrected', 'appended'];

/**
 * The steps that the states of a record allow. Amended, corrected, appended and entered-in-error are
 * what a report becomes after it was final; cancelled is one that never came to be.
 * @see https://hl7.org/fhir/R4/codesystem-diagnostic-report-status.html
 */
export const transitions: readonly Transition[] = [
  { action: 'release', from: ['draft', 'preliminary'], to: 'preliminary' },
  { action: 'sign', from: ['draft', 'preliminary'], to: 'final' },
  // A second signature, or one on a changed record, verifies and changes nothing.
  { action: 'sign', from: issued },
  { action: 'amend', from: issued, to: 'amended' },
  { action: 'correct', from: issued, to: 'corrected' },
  { action: 'append', from: issued, to: 'appended' },
  { action: 'cancel', from: ['draft', 'preliminary'], to: 'cancelled' },
  // A preliminary or cancelled record of the wrong patient has left the house too.
  { action: 'retract', from: ['preliminary', ...issued, 'cancelled'], to: 'entered-in-error' },
];

/** State after a step; undefined where the state does not allow it. */
export function stateAfter(status: RecordStatus, action: StepAction): RecordStatus | undefined {
  const found = transitions.find((row) => row.action === action && row.from.includes(status));
  return found && (found.to ?? status);
}

/**
 * Lists the steps that a state allows.
 *
 * @param status State of an exam.
 * @returns The steps in the order of the life of a record; empty where none follows.
 * @example
 * const buttons = stepsFrom(exam.status);
 */
export function stepsFrom(status: RecordStatus): StepAction[] {
  const actions = transitions.filter(({ from }) => from.includes(status));
  return actions.map(({ action }) => action);
}
