import { atRoot } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
import { core } from './core.ts';
/** What every resource has: id, language, meta, rules, extras of these. */
export const oddEveryResource: readonly NamedFault[] = [
  ['id-of-point', atRoot((it) => (it['id'] = '.'))],
  ['language-of-region', atRoot((it) => (it['language'] = 'de-CH'))],
  ['language-of-lower-region', atRoot((it) => (it['language'] = 'de-ch'))],
  ['language-of-private-use', atRoot((it) => (it['language'] = 'x-vineyard'))],
  ['language-of-underscore', atRoot((it) => (it['language'] = 'de_CH'))],
  ['meta-profile-relative', atRoot((it) => (it['meta'] = { profile: ['vineyard'] }))],
  [
    'meta-profile-twice',
    atRoot(
      (it) =>
        (it['meta'] = {
          profile: [core(String(it['resourceType'])), core(String(it['resourceType']))],
        }),
    ),
  ],
  [
    'meta-profile-of-core',
    atRoot((it) => (it['meta'] = { profile: [core(String(it['resourceType']))] })),
  ],
  [
    'meta-profile-of-core-with-version',
    atRoot((it) => (it['meta'] = { profile: [`${core(String(it['resourceType']))}|9.9.9`] })),
  ],
  [
    'meta-profile-unknown',
    atRoot((it) => (it['meta'] = { profile: ['http://vineyard.example/profile'] })),
  ],
  ['meta-version-with-space', atRoot((it) => (it['meta'] = { versionId: 'a b' }))],
  ['meta-source-in-words', atRoot((it) => (it['meta'] = { source: 'our system' }))],
  [
    'meta-security-of-unknown-code',
    atRoot(
      (it) =>
        (it['meta'] = {
          security: [
            { system: 'http://terminology.hl7.org/CodeSystem/v3-Confidentiality', code: 'BANANA' },
          ],
        }),
    ),
  ],
  ['meta-tag-of-display', atRoot((it) => (it['meta'] = { tag: [{ display: 'x' }] }))],
  ['rules-absolute', atRoot((it) => (it['implicitRules'] = 'http://vineyard.example/rules'))],
  ['resource-type-twice-written', atRoot((it) => (it['ResourceType'] = 'Patient'))],
  ['schema-of-json', atRoot((it) => (it['$schema'] = 'http://json-schema.org/draft-06/schema#'))],
  [
    'extension-of-root-of-bare',
    atRoot((it) => (it['extension'] = [{ url: 'http://vineyard.example/e', valueString: 'x' }])),
  ],
  [
    'extra-of-id',
    atRoot(
      (it) => (it['_id'] = { extension: [{ url: 'http://vineyard.example/e', valueString: 'x' }] }),
    ),
  ],
  [
    'extra-of-language',
    atRoot(
      (it) =>
        (it['_language'] = {
          extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }],
        }),
    ),
  ],
];
