import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';
import { collectionCases } from './bundles/collections.ts';
import { documentCases } from './bundles/documents.ts';
import { messageCases } from './bundles/messages.ts';
import { responseAndHistoryCases } from './bundles/responses-and-histories.ts';
import { searchSetCases } from './bundles/search-sets.ts';
import { signatureAndIssueCases } from './bundles/signatures-and-issues.ts';
import { transactionCases } from './bundles/transactions.ts';

/** Whole bundles, sound and broken, by name. */
export function bundleCases(version: FhirRelease): Record<string, Json> {
  return {
    ...collectionCases,
    ...searchSetCases,
    ...transactionCases,
    ...responseAndHistoryCases,
    ...documentCases(version),
    ...messageCases(version),
    ...signatureAndIssueCases(version),
  };
}
