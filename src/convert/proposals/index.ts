export type { HeadingPlace } from '../mapping/mapping.ts';
export { type ConfirmOptions, confirmFindings } from './apply.ts';
export { parseProposals, proposalLines } from './lines.ts';
export type {
  Confirmation,
  Proposal,
  ProposalPart,
  ProposalReasons,
  ProposedFinding,
  TextPlace,
} from './proposal.ts';
export { type ProposeOptions, proposeFindings } from './propose.ts';
