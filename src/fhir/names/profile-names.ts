/** Our profiles of R4 and R5, by the last part of their canonical URL; their sources stand in profiles/fsh. */
export const profileNames = [
  'face-neck-observation',
  'face-neck-finding',
  'face-neck-region-state',
  'face-neck-sensation',
  'face-neck-sensation-comparison',
  'face-neck-test',
  'face-neck-measurement',
  'face-neck-symptom',
  'face-neck-region-group',
  'face-neck-report',
  'face-neck-composition',
  'face-neck-document',
] as const;

export type ProfileName = (typeof profileNames)[number];

export function profileUrl(base: string, name: ProfileName): string {
  return `${base}/StructureDefinition/${name}`;
}
