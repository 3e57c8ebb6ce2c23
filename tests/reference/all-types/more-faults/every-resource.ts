import { atRoot } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
/** What every resource has: id, language, rules, meta. */
export const everyResourceFaults: readonly NamedFault[] = [
  ['id-of-65-characters', atRoot((resource) => (resource['id'] = 'a'.repeat(65)))],
  ['id-of-nothing', atRoot((resource) => (resource['id'] = ''))],
  ['id-as-number', atRoot((resource) => (resource['id'] = 1))],
  ['id-with-space', atRoot((resource) => (resource['id'] = 'a b'))],
  ['language-in-words', atRoot((resource) => (resource['language'] = 'German words'))],
  ['language-as-concept', atRoot((resource) => (resource['language'] = { text: 'German' }))],
  ['rules-in-words', atRoot((resource) => (resource['implicitRules'] = 'our rules'))],
  ['meta-as-list', atRoot((resource) => (resource['meta'] = [{ versionId: '1' }]))],
  [
    'meta-updated-on-a-day',
    atRoot((resource) => (resource['meta'] = { lastUpdated: '2021-05-02' })),
  ],
  [
    'meta-of-unknown-property',
    atRoot((resource) => (resource['meta'] = { updated: '2021-05-02' })),
  ],
  ['meta-version-as-number', atRoot((resource) => (resource['meta'] = { versionId: 1 }))],
  [
    'meta-profile-as-text',
    atRoot((resource) => (resource['meta'] = { profile: 'https://vineyard.example/p' })),
  ],
  [
    'meta-profile-of-another-type',
    atRoot(
      (resource) =>
        (resource['meta'] = { profile: ['http://hl7.org/fhir/StructureDefinition/Linkage'] }),
    ),
  ],
  [
    'meta-tag-twice',
    atRoot(
      (resource) =>
        (resource['meta'] = {
          tag: [
            { system: 'https://vineyard.example/t', code: 'a' },
            { system: 'https://vineyard.example/t', code: 'a' },
          ],
        }),
    ),
  ],
];
