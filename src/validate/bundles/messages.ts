import type { Scope } from '../walk/scope.ts';
import type { BundleIndex } from './bundle-index.ts';
import { checkReferences } from './documents.ts';

/** "The transaction data is always included in the bundle that is the full message." */
const focusRule = 'https://hl7.org/fhir/R4/messageheader-definitions.html#MessageHeader.focus';

/** What a message is about stands in it. */
export function checkMessage(index: BundleIndex, scope: Scope): void {
  const header = index.entries[0]?.resource;
  // That the first entry is a MessageHeader is bdl-12.
  if (header?.['resourceType'] !== 'MessageHeader') return;
  const below = ['entry', 0, 'resource', 'focus'];
  checkReferences(header['focus'], index, scope, below, 'message', focusRule);
}
