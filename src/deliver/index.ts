export {
  type AnswerDeviation,
  type AnswerFault,
  answerDeviations,
  answerFaults,
} from './answer-faults.ts';
export {
  type Capabilities,
  readCapabilities,
  type ServerSettings,
  settingsFor,
} from './capabilities.ts';
export { type CutOptions, cutBundle } from './cut.ts';
export {
  type DeliverOptions,
  type Delivery,
  type DeliveryState,
  deliver,
} from './deliver.ts';
export { heldVersions } from './held.ts';
export type { DeliveryResult, Judged } from './judge.ts';
export type { Exchange, FhirServer } from './server.ts';
export type { AllowedChange, ForbiddenChange, ServerChange } from './stored/changes.ts';
export { type ReadBack, readBack } from './stored/read-back.ts';
