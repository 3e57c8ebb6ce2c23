/** Parts of an exam that it can do without: one that is unsound, or not wanted, leaves an exam behind. */
export const optionalParts = [
  'organization',
  'encounter',
  'indication',
  'consents',
  'conditions',
  'instruments',
  'conclusion',
  'prompts',
  'judgements',
  'history',
] as const;

export type OptionalPart = (typeof optionalParts)[number];
