import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import { bundle, entry, patient } from './parts.ts';

/** The signature of a bundle, and its issues in R5. */
export function signatureAndIssueCases(version: FhirRelease): Record<string, Json> {
  return {
    'signature-sound': bundle('collection', [entry(patient())], {
      signature: {
        type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
        when: '2026-03-04T10:00:00Z',
        who: { reference: 'Patient/p1' },
      },
    }),
    'signature-of-unknown-format': bundle('collection', [entry(patient())], {
      signature: {
        type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
        when: '2026-03-04T10:00:00Z',
        who: { reference: 'Patient/p1' },
        sigFormat: 'banana',
      },
    }),
    'signature-by-wrong-type': bundle('collection', [entry(patient())], {
      signature: {
        type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
        when: '2026-03-04T10:00:00Z',
        who: { reference: 'Observation/p1' },
      },
    }),
    ...(version === 'R5' && {
      'issues-of-error': bundle('collection', [entry(patient())], {
        issues: {
          resourceType: 'OperationOutcome',
          issue: [{ severity: 'error', code: 'processing' }],
        },
      }),
      'issues-of-warning': bundle('collection', [entry(patient())], {
        issues: {
          resourceType: 'OperationOutcome',
          issue: [{ severity: 'warning', code: 'processing' }],
        },
      }),
    }),
  };
}
