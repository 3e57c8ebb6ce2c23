import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';
import {
  bundle,
  composition,
  document,
  entry,
  identified,
  observation,
  patient,
  put,
  uuid,
} from './parts.ts';

/** Documents. */
export function documentCases(version: FhirRelease): Record<string, Json> {
  return {
    'document-sound': document([entry(composition(version)), entry(patient())]),
    'document-without-identifier': bundle(
      'document',
      [entry(composition(version)), entry(patient())],
      { timestamp: identified.timestamp },
    ),
    'document-without-system': document([entry(composition(version)), entry(patient())], {
      identifier: { value: '1' },
    }),
    'document-without-timestamp': bundle(
      'document',
      [entry(composition(version)), entry(patient())],
      { identifier: identified.identifier },
    ),
    'document-of-patient-first': document([entry(patient()), entry(composition(version))]),
    'document-without-entries': document([]),
    'document-without-subject': document([entry(composition(version))]),
    'document-with-orphan': document([
      entry(composition(version)),
      entry(patient()),
      entry(patient('p2')),
    ]),
    'document-with-two-compositions': document([
      entry(composition(version)),
      entry(patient()),
      entry(composition(version, { id: 'c2' })),
    ]),
    'document-with-backward-link': document([
      entry(composition(version)),
      entry(patient()),
      entry(observation('o1', 'Patient/p1')),
    ]),
    'document-with-section-entry-missing': document([
      entry(
        composition(version, {
          section: [{ title: 'x', entry: [{ reference: 'Observation/o9' }] }],
        }),
      ),
      entry(patient()),
    ]),
    'document-with-empty-section': document([
      entry(composition(version, { section: [{ title: 'x' }] })),
      entry(patient()),
    ]),
    'document-with-section-of-reason-and-entry': document([
      entry(
        composition(version, {
          section: [
            { title: 'x', entry: [{ reference: 'Patient/p1' }], emptyReason: { text: 'none' } },
          ],
        }),
      ),
      entry(patient()),
    ]),
    'document-with-request': document([entry(composition(version), put), entry(patient())]),
    'document-with-mixed-fullUrls': document([
      { fullUrl: uuid(1), resource: composition(version) },
      entry(patient()),
    ]),
    'document-with-attester-missing': document([
      entry(
        composition(version, {
          attester: [
            {
              mode:
                version === 'R5'
                  ? {
                      coding: [
                        {
                          system: 'http://hl7.org/fhir/composition-attestation-mode',
                          code: 'legal',
                        },
                      ],
                    }
                  : 'legal',
              party: { reference: 'Practitioner/x' },
            },
          ],
        }),
      ),
      entry(patient()),
    ]),
    ...(version === 'R5' && {
      'document-with-issues': document([entry(composition(version)), entry(patient())], {
        issues: {
          resourceType: 'OperationOutcome',
          issue: [{ severity: 'warning', code: 'processing' }],
        },
      }),
    }),
  };
}
