/** What can be judged of a complaint or finding, in the order in which samples draw it. */
export const judgements = [
  'unexplained',
  'explained',
  'persistent',
  'not-persistent',
  'infectious',
  'not-infectious',
] as const;
